import type { HeadModel } from '../../model/head-model.ts';
import type { HeadResult } from '../../results/head-result.ts';
import { solveHead } from '../../solve-head.ts';
import { applyPlacement, type Placement } from './placement.ts';
import type { Verified } from './rows.ts';

/** Criteria that the search makes small itself. */
const SOUGHT: readonly string[] = ['bow', 'flatness'];

/**
 * Solves placements like any other head, in order, until one passes every criterion that the search does not make small;
 * the first one where none does.
 *
 * @returns its index and what the solver says of it
 */
export function verified(
  model: HeadModel,
  placements: readonly Placement[],
): { readonly index: number; readonly verified: Verified } {
  let first: Omit<Verified, 'solved'> | null = null;
  for (const [index, placement] of placements.entries()) {
    const own = judged(applyPlacement(model, placement));
    if (own.criteria.every(({ criterion, outcome }) => SOUGHT.includes(criterion) || outcome !== 'fail'))
      return { index, verified: { ...own, solved: index + 1 } };
    first ??= own;
  }
  return { index: 0, verified: { ...first!, solved: placements.length } };
}

function judged(model: HeadModel): Omit<Verified, 'solved'> {
  const { result } = solveHead(model, { strength: 'when judged' });
  const { outcome, criteria, sentence } = result.verdict;
  return { ...worstOf(result), outcome, criteria, sentence };
}

/** Bow and minimum-zone flatness, over all cases and both ends of a bracketed joint where they are judged. */
function worstOf({ cases, verdict }: HeadResult) {
  const criterion = (name: string) => verdict.criteria.find((judgement) => judgement.criterion === name)?.value;
  return {
    bow: criterion('bow') ?? Math.max(...cases.map(({ bow }) => Math.abs(bow.value))),
    flatness: criterion('flatness') ?? Math.max(...cases.map(({ flatness }) => flatness.minimumZone)),
  };
}
