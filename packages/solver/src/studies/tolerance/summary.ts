import { beyond, type Figure } from '../judged.ts';
import type { PlacedParameter } from '../parameter.ts';
import { significant } from '../significant.ts';
import type { TolerancePlan } from './plan.ts';
import type { ToleranceRow } from './row.ts';
import { capability, deviationOf, type Estimate, meanOf, proportion, quantileEstimate } from './sample-statistics.ts';
import type { Cause } from './scatter-model.ts';
import { type SobolIndex, sobolIndices } from './sobol-indices.ts';

/** How one figure scatters over the heads. */
export interface FigureScatter {
  readonly criterion: string;
  readonly unit: Figure['unit'];
  readonly bound: Figure['bound'];
  readonly limit: number;
  readonly mean: number;
  readonly sigma: number;
  readonly least: number;
  readonly most: number;
  readonly quantiles: readonly (Estimate & { readonly share: number })[];
  /** Cpu, or its like against a lower limit; null when the figure does not scatter or has limits of its own in each head. */
  readonly capability: Estimate | null;
  /** Probability of being beyond the limit. */
  readonly failing: Estimate & { readonly count: number };
  /** What matters, most first; empty when not asked for, null when the figure does not scatter. */
  readonly indices: readonly (SobolIndex & { readonly cause: string })[] | null;
}

export interface ToleranceSummary {
  readonly parameters: readonly string[];
  /** Heads that the figures below are over. */
  readonly heads: number;
  /** Of these, heads that could not be built or solved; they count as failing. */
  readonly faults: number;
  readonly confidence: number;
  /** Probability of breaking any limit. */
  readonly failing: Estimate & { readonly count: number };
  readonly figures: readonly FigureScatter[];
  readonly remarks: readonly string[];
}

const QUANTILES = [0.5, 0.95, 0.99];

/** What the heads of a tolerance study say together. A figure beyond its limit fails, whatever its numerical error. */
export function toleranceSummary(
  plan: TolerancePlan,
  parameters: readonly PlacedParameter[],
  causes: readonly Cause[],
  rows: readonly ToleranceRow[],
): ToleranceSummary {
  const { confidence = 0.95, quantiles = QUANTILES, seed } = plan;
  const blockSize = causes.length === 0 ? 1 : causes.length + 2;
  // The mixed heads of a block share causes with A and B: only these two are heads as they come.
  const heads = rows.filter(({ index }) => index % blockSize < 2);
  const criteria = [...new Set(heads.flatMap(({ figures = {} }) => Object.keys(figures)))];
  const failing = (count: number) => ({ count, ...estimate(proportion(count, heads.length, confidence)) });
  const figuresOf = (criterion: string): FigureScatter => {
    const figures = heads.flatMap(({ figures = {} }) => (figures[criterion] === undefined ? [] : [figures[criterion]]));
    const [{ unit, bound, limit }] = figures;
    const values = figures.map(({ value }) => value);
    const sorted = values.toSorted((a, b) => a - b);
    const sameLimit = figures.every((figure) => figure.limit === limit);
    const able = sameLimit && values.length > 1 ? capability(values, limit, bound, confidence) : null;
    return {
      criterion,
      unit,
      bound,
      limit,
      mean: significant(meanOf(values)),
      sigma: values.length < 2 ? 0 : significant(deviationOf(values)),
      least: sorted[0],
      most: sorted[sorted.length - 1],
      quantiles: quantiles.map((share) => ({ share, ...estimate(quantileEstimate(sorted, share, confidence)) })),
      capability: able && estimate(able),
      failing: failing(figures.filter((figure) => beyond(figure) > 0).length + heads.length - figures.length),
      indices: causes.length === 0 ? [] : indicesOf(criterion, causes, rows, seed),
    };
  };
  const faults = heads.filter(({ fault }) => fault !== undefined).length;
  const fails = ({ figures }: ToleranceRow): boolean =>
    figures === undefined || Object.values(figures).some((figure) => beyond(figure) > 0);
  return {
    parameters: parameters.map(({ name }) => name),
    heads: heads.length,
    faults,
    confidence,
    failing: heads.length === 0 ? { count: 0, value: 0, low: 0, high: 1 } : failing(heads.filter(fails).length),
    figures: criteria.map(figuresOf),
    remarks: remarksOf(plan, faults),
  };
}

function indicesOf(criterion: string, causes: readonly Cause[], rows: readonly ToleranceRow[], seed: number) {
  const size = causes.length + 2;
  const blocks = new Map<number, number[]>();
  for (const { index, figures } of rows) {
    const value = figures?.[criterion]?.value;
    if (value === undefined) continue;
    const number = Math.floor(index / size);
    const block = blocks.get(number) ?? [];
    block[index % size] = value;
    blocks.set(number, block);
  }
  const whole = [...blocks.values()].filter((block) => Object.keys(block).length === size);
  const found = sobolIndices(whole, seed);
  return (
    found
      ?.map(({ first, total, firstError, totalError }, i) => ({
        cause: causes[i].name,
        first: significant(first),
        total: significant(total),
        firstError: significant(firstError),
        totalError: significant(totalError),
      }))
      .sort((a, b) => b.total - a.total) ?? null
  );
}

function remarksOf({ sampling = 'sobol', samples }: TolerancePlan, faults: number): string[] {
  return [
    ...(sampling === 'sobol'
      ? [
          'The heads are points of a Sobol sequence, more even than random ones: intervals are those of random heads, mostly too wide.',
        ]
      : []),
    ...(sampling === 'sobol' && !Number.isInteger(Math.log2(samples))
      ? [`${samples} is no power of two, for which a Sobol sequence is at its most even.`]
      : []),
    ...(faults > 0 ? [`${faults} heads could not be built or solved; they count as failing and have no figures.`] : []),
  ];
}

function estimate({ value, low, high }: Estimate): Estimate {
  return {
    value: significant(value),
    low: low === null ? null : significant(low),
    high: high === null ? null : significant(high),
  };
}
