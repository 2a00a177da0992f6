import type { FaultReport } from '../fault/fault.ts';
import type { HeadModel } from '../model/head-model.ts';
import type { HeadResult } from '../results/head-result.ts';
import type { Advice } from '../studies/advice/advice.ts';

/** What a solve answers with, across a worker or in place. Every answer carries the run it belongs to. */
export type Answer =
  | { readonly run: number; readonly kind: 'solved'; readonly result: HeadResult; readonly quality: 'full' | 'live' }
  | { readonly run: number; readonly kind: 'refused'; readonly fault: FaultReport }
  | { readonly run: number; readonly kind: 'superseded' };

/** The solver as a worker exposes it. */
export interface SolverService {
  /**
   * @param quality `live` skips the error estimate while a fastener is dragged
   * @param newest `[1]` in shared memory: the newest run asked for, which ends older ones where they are
   */
  solve(run: number, model: HeadModel, quality: 'full' | 'live', newest?: Int32Array | null): Promise<Answer>;

  /**
   * What would bring the head of a run nearer to its limit, if that run gave the last answer and it was full. Any later
   * solve ends it.
   */
  advise(run: number, newest?: Int32Array | null): Promise<Advice | null>;
}
