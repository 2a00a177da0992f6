import type { Limits } from '../model/head-model.ts';
import type { CaseResult, CriterionVerdict, Outcome, Verdict } from './head-result.ts';
import { twoMeshError } from './two-mesh.ts';

/** The same cases solved otherwise, to say how far the headline can be trusted; `null` = not solved. */
export interface SecondOpinions {
  /** On a coarser mesh, by the ratio of the two-mesh estimate. */
  readonly coarse: readonly CaseResult[] | null;
  /** By thin-plate theory, on the same mesh. */
  readonly thin: readonly CaseResult[] | null;
}

interface Candidate {
  readonly value: number;
  readonly site: string;
}

/** How each criterion is read from a case: its magnitude and where it is worst. */
const CRITERIA = {
  bow: (result: CaseResult): Candidate => ({ value: Math.abs(result.bow.value), site: result.bow.site }),
  flatness: (result: CaseResult): Candidate => ({
    value: result.flatness.minimumZone,
    site: result.sites.reduce((worst, site) => (site.flatness > worst.flatness ? site : worst)).name,
  }),
} as const;

/** Bow in words: `47.3 um`. */
export function micrometres(value: number): string {
  const um = value * 1000;
  return `${Math.abs(um) >= 100 ? um.toFixed(0) : Math.abs(um) >= 10 ? um.toFixed(1) : um.toFixed(2)} um`;
}

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
  const criteria = (['bow', 'flatness'] as const).flatMap((criterion) => {
    const limit = limits[criterion];
    return limit === undefined ? [] : [judge(criterion, limit, limits.margin ?? 0, cases, opinions)];
  });
  const worst = criteria.reduce((a, b) => (b.value / b.limit > a.value / a.limit ? b : a));
  const outcome = (['fail', 'marginal'] as const).find((o) => criteria.some((c) => c.outcome === o)) ?? 'pass';
  const shear = worst.value > 0 ? (worst.shearAdds ?? 0) / worst.value : 0;
  return {
    outcome,
    criteria,
    sentence: sentence(worst),
    remarks: Math.abs(shear) > 0.1 ? [...remarks, shearRemark(worst.criterion, worst.value, shear)] : remarks,
  };
}

function judge(
  criterion: CriterionVerdict['criterion'],
  limit: number,
  margin: number,
  cases: readonly CaseResult[],
  opinions: SecondOpinions,
): CriterionVerdict {
  const read = CRITERIA[criterion];
  const values = cases.map(read);
  let worst = 0;
  values.forEach(({ value }, i) => {
    if (value > values[worst].value) worst = i;
  });
  const { value, site } = values[worst];
  const { coarse, thin } = opinions;
  const error = coarse === null ? null : twoMeshError(value, read(coarse[worst]).value);
  const shearAdds = thin === null ? null : value - read(thin[worst]).value;
  return {
    criterion,
    outcome: compare(value, error ?? 0, limit, margin),
    value,
    limit,
    error,
    shearAdds,
    case: cases[worst].name,
    site,
  };
}

function compare(value: number, error: number, limit: number, margin: number): Outcome {
  if (value - error > limit) return 'fail';
  return value + error > limit || value > limit * (1 - margin) ? 'marginal' : 'pass';
}

function sentence({ criterion, value, limit, site, case: name }: CriterionVerdict): string {
  const gap = value > limit ? `${micrometres(value - limit)} over` : `${micrometres(limit - value)} inside`;
  return criterion === 'bow'
    ? `Site ${site} bows ${micrometres(value)} in case "${name}", ${gap} the ${micrometres(limit)} limit.`
    : `The site area is flat within ${micrometres(value)} in case "${name}", ${gap} the ${micrometres(limit)} limit; site ${site} is the least flat.`;
}

function shearRemark(criterion: string, value: number, share: number): string {
  const percent = (share * 100).toFixed(0);
  return `Transverse shear accounts for ${micrometres(share * value)} (${percent} %) of the ${criterion}: thin-plate formulas would miss it on a head this stocky.`;
}
