import type { CriterionVerdict, Limits } from '@flathead/solver';
import type { RunState } from './run-store.ts';

export type CriterionKind = CriterionVerdict['criterion'];

/** What is to be said of one criterion that has a limit. */
export interface CriterionState {
  readonly kind: CriterionKind;
  /** `judged` by the answer shown; `kept` from the last full answer; `awaited`; `unknown` as a value is missing. */
  readonly state: 'judged' | 'kept' | 'awaited' | 'unknown';
  /** `null` unless judged or kept. */
  readonly verdict: CriterionVerdict | null;
}

/** Limits by criterion, in the order in which they are shown. */
const LIMITS: readonly (readonly [CriterionKind, keyof Limits])[] = [
  ['bow', 'bow'],
  ['flatness', 'flatness'],
  ['contact', 'contactForce'],
  ['strength', 'strengthFactor'],
  ['failureProbability', 'failureProbability'],
  ['fasteners', 'fastener'],
];

/**
 * The criteria that the model shown asks for. A live answer leaves those of stress out; what the last full answer said of
 * them stays until the next.
 */
export function criterionStates({ solved, full }: Pick<RunState, 'solved' | 'full'>): CriterionState[] {
  if (solved === null) return [];
  const find = (of: typeof solved, kind: CriterionKind) =>
    of.result.verdict.criteria.find(({ criterion }) => criterion === kind) ?? null;
  return LIMITS.filter(([, limit]) => solved.model.limits[limit] !== undefined).map(([kind, limit]) => {
    const verdict = find(solved, kind);
    if (verdict !== null) return { kind, state: 'judged', verdict };
    if (solved.quality === 'full') return { kind, state: 'unknown', verdict: null };
    const kept = full === null ? null : find(full, kind);
    if (kept !== null) return { kind, state: 'kept', verdict: kept };
    const tried = full !== null && full.model.limits[limit] !== undefined;
    return { kind, state: tried ? 'unknown' : 'awaited', verdict: null };
  });
}
