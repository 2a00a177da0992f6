import type { Limits } from '../model/head-model.ts';
import { bow } from './criteria/bow.ts';
import { contact } from './criteria/contact.ts';
import { type Criterion, micrometres, type Reading, usedShare } from './criteria/criterion.ts';
import { failureProbability } from './criteria/failure-probability.ts';
import { fasteners } from './criteria/fasteners.ts';
import { flatness } from './criteria/flatness.ts';
import { strength } from './criteria/strength.ts';
import type { FieldGap } from './field-gap.ts';
import type { CaseResult, CriterionVerdict, Outcome, Verdict } from './head-result.ts';
import { fieldError, twoMeshError } from './two-mesh.ts';

/**
 * The same cases solved otherwise, to say how far the headline can be trusted; `null` = not solved. Measured by the index
 * of the case when asked for, since only the worst case of a criterion is.
 */
export interface SecondOpinions {
  /** On a coarser mesh, by the ratio of the two-mesh estimate. */
  readonly coarse: CoarseOpinion | null;
  /** By thin-plate theory, on the same mesh. */
  readonly thin: Opinion | null;
}

type Opinion = (index: number) => CaseResult;

/** What the coarser mesh says, and how far its deflection is from that on the mesh. */
export interface CoarseOpinion {
  readonly measured: Opinion;
  readonly gap: (index: number) => FieldGap;
}

/** What a head is judged by, where the model gives a limit. */
const CRITERIA: readonly Criterion[] = [bow, flatness, contact, strength, failureProbability, fasteners];

/**
 * Judges every criterion that has a limit over all load cases, and the head by its worst criterion.
 *
 * A value within its error of the limit, or within the margin kept in hand, is marginal.
 */
export function verdictOf(
  limits: Limits,
  cases: readonly CaseResult[],
  opinions: SecondOpinions,
  remarks: readonly string[],
): Verdict {
  const judged = CRITERIA.flatMap((criterion) => {
    const limit = criterion.limit(limits);
    const verdict = limit === undefined ? null : judge(criterion, limit, limits.margin ?? 0, cases, opinions);
    return verdict === null ? [] : [{ criterion, verdict }];
  });
  const criteria = judged.map(({ verdict }) => verdict);
  const { criterion, verdict: worst } = judged.reduce((a, b) => (usedShare(b.verdict) > usedShare(a.verdict) ? b : a));
  return {
    outcome: worstOutcome(criteria),
    criteria,
    sentence: criterion.sentence(worst),
    remarks: [...remarks, ...criteria.flatMap(shearRemark)],
  };
}

/** A head is no better than its worst criterion. */
export function worstOutcome(criteria: readonly CriterionVerdict[]): Outcome {
  return (['fail', 'marginal'] as const).find((o) => criteria.some((c) => c.outcome === o)) ?? 'pass';
}

function judge(
  criterion: Criterion,
  limit: number,
  margin: number,
  cases: readonly CaseResult[],
  { coarse, thin }: SecondOpinions,
): CriterionVerdict | null {
  const { criterion: name, unit, bound } = criterion;
  let worst: { readonly reading: Reading; readonly index: number } | null = null;
  for (const [index, result] of cases.entries()) {
    const reading = criterion.read(result);
    if (reading === null) continue;
    const worse =
      worst === null || (bound === 'most' ? reading.value > worst.reading.value : reading.value < worst.reading.value);
    if (worse) worst = { reading, index };
  }
  if (worst === null) return null;
  const { reading, index } = worst;
  const other = (opinion: Opinion | null) => (opinion === null ? null : criterion.read(opinion(index)));
  const { value, site, mode } = reading;
  const thinner = other(thin);
  const error = coarse === null ? null : errorOf(criterion, value, index, coarse);
  return {
    criterion: name,
    unit,
    bound,
    outcome: compare(bound === 'most' ? value - limit : limit - value, error ?? 0, margin * limit),
    value,
    limit,
    error,
    shearAdds: thinner === null ? null : value - thinner.value,
    bracket: null,
    case: cases[index].name,
    site,
    ...(mode === undefined ? {} : { mode }),
  };
}

/** `null` where the coarser mesh says nothing of the criterion. */
function errorOf(criterion: Criterion, value: number, index: number, { measured, gap }: CoarseOpinion): number | null {
  const coarser = criterion.read(measured(index));
  if (coarser === null) return null;
  return Math.max(
    twoMeshError(value, coarser.value, criterion.order),
    criterion.apart === undefined ? 0 : fieldError(criterion.apart(gap(index))),
    (criterion.leastError ?? 0) * value,
  );
}

/** @param beyond how far the value lies beyond its limit, negative inside */
function compare(beyond: number, error: number, margin: number): Outcome {
  if (beyond > error) return 'fail';
  return beyond > -error || beyond > -margin ? 'marginal' : 'pass';
}

/** What thin-plate formulas would miss of a deflection, where it is more than a tenth. */
function shearRemark({ criterion, unit, value, shearAdds }: CriterionVerdict): string[] {
  if (unit !== 'mm' || shearAdds === null || Math.abs(shearAdds) <= 0.1 * value) return [];
  const amount = `${micrometres(Math.abs(shearAdds))} (${((Math.abs(shearAdds) / value) * 100).toFixed(0)} %)`;
  return shearAdds > 0
    ? [
        `Transverse shear accounts for ${amount} of the ${criterion}: thin-plate formulas would miss it on a head this stocky.`,
      ]
    : [
        `Transverse shear takes ${amount} off the ${criterion}: thin-plate formulas would state too much of it on a head this stocky.`,
      ];
}
