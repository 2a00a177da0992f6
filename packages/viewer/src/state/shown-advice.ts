import type { Advice, HeadModel, HeadResult } from '@flathead/solver';
import type { RunState } from './run-store.ts';

/** Whether a head is one that advice is sought for: it does not pass in bow or in flatness. */
export function wantsAdvice({ verdict }: HeadResult): boolean {
  return verdict.criteria.some(
    ({ criterion, outcome }) => (criterion === 'bow' || criterion === 'flatness') && outcome !== 'pass',
  );
}

/**
 * What is to be said of the model on the bench: its advice, `awaited` while that is found out, `none` where it never
 * comes because nothing is wanted or the model was refused.
 */
export function shownAdvice({ solved, refusal, advice }: RunState, model: HeadModel): Advice | 'awaited' | 'none' {
  if (solved === null || !wantsAdvice(solved.result)) return 'none';
  if (advice?.model === model) return advice.advice ?? 'none';
  return refusal?.model === model ? 'none' : 'awaited';
}
