import { micrometres, usedShare } from './criteria/criterion.ts';
import type { CriterionVerdict, HeadResult, Verdict } from './head-result.ts';
import { worstOutcome } from './verdict.ts';

/**
 * Result of a head whose frame is screwed to the body: the joint lies somewhere between sliding and bonded, so each
 * criterion is judged by the end where it is worse and says both. Fields and tables are those of the end whose verdict is
 * worse.
 */
export function bracketed(sliding: HeadResult, bonded: HeadResult): HeadResult {
  const pairs = sliding.verdict.criteria.flatMap((one): [CriterionVerdict, CriterionVerdict][] => {
    const other = bonded.verdict.criteria.find(({ criterion }) => criterion === one.criterion);
    return other === undefined ? [] : [[one, other]];
  });
  const share = ({ verdict }: HeadResult) => Math.max(...verdict.criteria.map(usedShare));
  const shown = share(bonded) > share(sliding) ? bonded : sliding;
  const criteria = pairs.map(([one, other]) => ({
    ...(usedShare(other) > usedShare(one) ? other : one),
    bracket: { sliding: one.value, bonded: other.value },
  }));
  const verdict: Verdict = {
    ...shown.verdict,
    outcome: worstOutcome(criteria),
    criteria,
    remarks: [...shown.verdict.remarks, ...spread(criteria, shown === sliding ? 'sliding' : 'bonded')],
  };
  return { ...shown, verdict, timings: sum(sliding.timings, bonded.timings) };
}

function spread(criteria: readonly CriterionVerdict[], shown: 'sliding' | 'bonded'): string[] {
  const bow = criteria.find(({ criterion }) => criterion === 'bow');
  if (bow === undefined || bow.bracket === null) return [];
  const { sliding, bonded } = bow.bracket;
  return [
    `The screwed frame lies between sliding on the body, where the bow is ${micrometres(sliding)}, and bonded to it, ${micrometres(bonded)}; maps and tables show the ${shown} end.`,
  ];
}

function sum(a: HeadResult['timings'], b: HeadResult['timings']): HeadResult['timings'] {
  return Object.fromEntries(
    [...new Set([...Object.keys(a), ...Object.keys(b)])].map((stage) => [stage, (a[stage] ?? 0) + (b[stage] ?? 0)]),
  );
}
