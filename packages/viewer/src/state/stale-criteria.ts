import type { CriterionVerdict } from '@flathead/solver';
import type { RunState } from './run-store.ts';

/**
 * Criteria of the last full answer that a live answer leaves out, where they are still asked for: stress is found for full
 * answers only.
 */
export function staleCriteria({ solved, full }: Pick<RunState, 'solved' | 'full'>): CriterionVerdict[] {
  if (solved === null || full === null || solved.quality === 'full') return [];
  const { strengthFactor, failureProbability } = solved.model.limits;
  const asked = { strength: strengthFactor, failureProbability } as const;
  const judged = new Set(solved.result.verdict.criteria.map(({ criterion }) => criterion));
  return full.result.verdict.criteria.filter(
    ({ criterion }) =>
      (criterion === 'strength' || criterion === 'failureProbability') &&
      asked[criterion] !== undefined &&
      !judged.has(criterion),
  );
}
