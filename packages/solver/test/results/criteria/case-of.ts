import type { CaseResult, CriterionVerdict, PartStrength, SiteResult } from '../../../src/results/head-result.ts';

/** A case that is flat and carries nothing, but for what a test is about. */
export function caseOf(changes: Partial<CaseResult>): CaseResult {
  return {
    name: 'mounted',
    w: new Float64Array(0),
    deviation: new Float64Array(0),
    fastenerPlane: [0, 0, 0],
    bow: { value: 0, at: [0, 0], site: 'A1' },
    flatness: { leastSquares: { total: 0, peak: 0, valley: 0, rms: 0 }, minimumZone: 0 },
    tilt: { slope: 0, alongX: 0, alongY: 0 },
    sites: [siteOf('A1', {})],
    fasteners: [],
    seats: [],
    strength: null,
    load: 0,
    reaction: 0,
    residual: null,
    ...changes,
  };
}

export function siteOf(name: string, changes: Partial<SiteResult>): SiteResult {
  return { name, bow: 0, at: [0, 0], flatness: 0, ...changes };
}

/** A case in which only the strength of its parts is known. */
export function strengthOf(...parts: Partial<PartStrength>[]): CaseResult {
  const part: PartStrength = {
    part: 'body',
    material: 'any',
    measure: 'principal',
    stress: 1,
    gross: 1,
    at: [0, 0],
    face: 'board',
    fastener: null,
    near: 'A1',
    strength: null,
    factor: null,
    failureProbability: null,
  };
  const strength = { parts: parts.map((changes) => ({ ...part, ...changes })), bodyTension: new Float64Array(0) };
  return caseOf({ strength });
}

/** A judgement, of which a sentence tells `value`, `limit`, `case` and `site`. */
export function judgementOf(changes: Partial<CriterionVerdict>): CriterionVerdict {
  return {
    criterion: 'bow',
    outcome: 'pass',
    unit: 'mm',
    bound: 'most',
    value: 0,
    limit: 1,
    error: null,
    shearAdds: null,
    bracket: null,
    case: 'mounted',
    site: 'B3',
    ...changes,
  };
}
