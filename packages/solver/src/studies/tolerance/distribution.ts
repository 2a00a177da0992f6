import cdf from '@stdlib/stats-base-dists-normal-cdf';
import quantile from '@stdlib/stats-base-dists-normal-quantile';
import { z } from 'zod';
import { Fault } from '../../fault/fault.ts';

const number = z.number().min(-1e12).max(1e12);
const spread = z.number().min(1e-15).max(1e12);

/** How a parameter scatters. */
export const distributionSchema = z
  .union([
    z.strictObject({
      normal: z.strictObject({
        mean: number,
        sigma: spread.optional().describe('standard deviation'),
        tolerance: spread.optional().describe('half-width of the tolerance, instead of sigma'),
        at: z.number().min(0.1).max(10).optional().describe('standard deviations that the tolerance is; 3 if left out'),
        within: z
          .tuple([number, number])
          .optional()
          .describe('values outside are rejected, as by inspection: the normal distribution is cut off there'),
      }),
    }),
    z.strictObject({ uniform: z.tuple([number, number]).describe('[least, most]') }),
    z.strictObject({ triangular: z.tuple([number, number, number]).describe('[least, most likely, most]') }),
  ])
  .meta({ id: 'Distribution' });

export type Distribution = z.infer<typeof distributionSchema>;

/** Inverse of a cumulative distribution: the value below which a share `u` of the parts lies, 0 < u < 1. */
export type Quantile = (u: number) => number;

/** Probability of a normal distribution that must lie within its bounds: with less, few parts would pass inspection. */
const LEAST_WITHIN = 1e-6;

/**
 * Inverse cumulative distribution.
 *
 * @param name of the parameter, for messages
 * @throws Fault SCHEMA or OUT_OF_RANGE when its numbers make no distribution
 */
export function quantileOf(distribution: Distribution, name: string): Quantile {
  if ('uniform' in distribution) {
    const [least, most] = distribution.uniform;
    requireAscending(name, 'uniform', [least, most]);
    return (u) => least + u * (most - least);
  }
  if ('triangular' in distribution) {
    const [least, mode, most] = distribution.triangular;
    requireAscending(name, 'triangular', [least, most]);
    if (mode < least || mode > most)
      refuse(name, 'triangular', 'its most likely value outside its ends', [least, mode, most]);
    const [left, right, width] = [mode - least, most - mode, most - least];
    return (u) => (u * width < left ? least + Math.sqrt(u * width * left) : most - Math.sqrt((1 - u) * width * right));
  }
  const { mean, sigma, tolerance, at = 3, within } = distribution.normal;
  if ((sigma === undefined) === (tolerance === undefined))
    throw new Fault(
      'SCHEMA',
      `The normal distribution of ${name} needs either "sigma" or "tolerance"${sigma === undefined ? '' : ', not both'}. Give one of them.`,
      name,
      { expected: '"sigma" or "tolerance"' },
    );
  const scale = sigma ?? tolerance! / at;
  if (within === undefined) return (u) => mean + scale * quantile(u, 0, 1);
  requireAscending(name, 'within', within);
  const [from, to] = within.map((x) => cdf(x, mean, scale));
  if (to - from < LEAST_WITHIN) refuse(name, 'within', 'next to no part within its bounds', within);
  return (u) => Math.min(within[1], Math.max(within[0], mean + scale * quantile(from + u * (to - from), 0, 1)));
}

function requireAscending(name: string, kind: string, [least, most]: readonly [number, number]): void {
  if (least >= most) refuse(name, kind, 'its ends in the wrong order', [least, most]);
}

function refuse(name: string, kind: string, flaw: string, value: readonly number[]): never {
  throw new Fault(
    'OUT_OF_RANGE',
    `The distribution of ${name} has ${flaw}: "${kind}" ${value.join(', ')}. Correct it.`,
    name,
    {
      value,
    },
  );
}

/**
 * A distribution of a text: `normal(4.5, 0.02)` with the standard deviation, `tolerance(4.5, 0.05)` or
 * `tolerance(4.5, 0.05, 3)` with the half-width and how many standard deviations it is, `uniform(4.4, 4.6)`,
 * `triangular(4.4, 4.5, 4.6)`, `truncated(4.5, 0.02, 4.45, 4.55)`.
 *
 * @throws Fault USAGE
 */
export function readDistribution(text: string): Distribution {
  const [, kind, list = ''] = /^\s*(\w+)\(([^()]*)\)\s*$/.exec(text) ?? [];
  const [a, b, c, d] = list.split(',').map((item) => (item.trim() === '' ? Number.NaN : Number(item)));
  const count = list.split(',').length;
  const good = list.split(',').every((item) => item.trim() !== '' && Number.isFinite(Number(item)));
  if (good && kind === 'normal' && count === 2) return { normal: { mean: a, sigma: b } };
  if (good && kind === 'tolerance' && count === 2) return { normal: { mean: a, tolerance: b } };
  if (good && kind === 'tolerance' && count === 3) return { normal: { mean: a, tolerance: b, at: c } };
  if (good && kind === 'uniform' && count === 2) return { uniform: [a, b] };
  if (good && kind === 'triangular' && count === 3) return { triangular: [a, b, c] };
  if (good && kind === 'truncated' && count === 4) return { normal: { mean: a, sigma: b, within: [c, d] } };
  throw new Fault(
    'USAGE',
    `"${text}" is no distribution. Write normal(mean, sigma), tolerance(mean, half-width, sigmas), uniform(least, most), triangular(least, likely, most) or truncated(mean, sigma, least, most).`,
    '',
    { value: text, expected: 'a distribution such as normal(4.5, 0.02)' },
  );
}
