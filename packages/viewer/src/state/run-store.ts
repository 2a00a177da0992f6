import type { Advice, FaultReport, HeadModel, HeadResult } from '@flathead/solver';
import { createStore } from 'zustand/vanilla';

/** An answer of the solver with the model it answers. */
export interface Solved {
  readonly model: HeadModel;
  readonly result: HeadResult;
  readonly quality: 'full' | 'live';
}

export interface Refusal {
  readonly model: HeadModel;
  readonly fault: FaultReport;
}

export interface RunState {
  /** The last good answer; it stays while newer edits are solved or refused. */
  readonly solved: Solved | null;
  /** The last good full answer: a live one lacks stress and what is judged by it. */
  readonly full: Solved | null;
  /** The newest model was refused. */
  readonly refusal: Refusal | null;
  /** What would help the head of the last full answer that was tried; `null` advice = nothing is to be said. */
  readonly advice: { readonly model: HeadModel; readonly advice: Advice | null } | null;
  /** The model being solved. */
  readonly solving: HeadModel | null;
  /** How often the solver was lost and started again. */
  readonly restarts: number;
}

export function createRunStore() {
  return createStore<RunState>()(() => ({
    solved: null,
    full: null,
    refusal: null,
    advice: null,
    solving: null,
    restarts: 0,
  }));
}

export type RunStore = ReturnType<typeof createRunStore>;

/** Why the shown result does not belong to the shown model; `null` = it does. */
export type Staleness = 'solving' | 'refused' | 'draft' | null;

/** Whether the model was refused, so that the numbers shown are those of an earlier one, which may have other places. */
export function showsEarlier({ refusal, solved }: RunState, model: HeadModel): boolean {
  return refusal?.model === model && solved !== null && solved.model !== model;
}

/** @param drafts whether a field holds text that did not reach the model */
export function stalenessOf(run: RunState, model: HeadModel, drafts: boolean): Staleness {
  if (run.refusal?.model === model) return 'refused';
  if (run.solved?.model !== model) return 'solving';
  return drafts ? 'draft' : null;
}
