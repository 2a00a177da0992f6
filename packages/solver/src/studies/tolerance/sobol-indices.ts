import { mersenne } from 'pure-rand/generator/mersenne';

/** Values of one block of samples: at A, at B, and at A with one cause after the other taken from B. */
export type Block = readonly number[];

/** Share of the variance that a cause has: by itself, and with all it does together with others. */
export interface SobolIndex {
  readonly first: number;
  readonly total: number;
  /** Half-widths of the 95 % intervals, by bootstrap. */
  readonly firstError: number;
  readonly totalError: number;
}

const RESAMPLES = 300;
/** Standard deviations of a 95 % interval. */
const WIDE = 1.96;

/**
 * First-order and total Sobol indices of each cause. First order by Saltelli and others 2010 (Comput. Phys. Commun. 181,
 * Table 2 b): `mean f(B) (f(AB_i) - f(A)) / V`; total by Jansen 1999 (the same table, f): `mean (f(A) - f(AB_i))^2 / 2V`. The
 * variance V is that over A and B; the mean is taken off first, which makes the first smaller in error.
 *
 * @returns one for each cause, null when the values do not vary
 */
export function sobolIndices(blocks: readonly Block[], seed: number): SobolIndex[] | null {
  const count = blocks.length;
  if (count < 2) return null;
  const all = Uint32Array.from({ length: count }, (_, j) => j);
  const best = shares(blocks, all);
  if (best === null) return null;
  const generator = mersenne(seed);
  const drawn = new Uint32Array(count);
  const resampled = Array.from({ length: RESAMPLES }, () => {
    for (let j = 0; j < count; j++) drawn[j] = Math.floor(((generator.next() >>> 0) / 4294967296) * count);
    return shares(blocks, drawn) ?? best;
  });
  return best.map(({ first, total }, i) => ({
    first,
    total,
    firstError: WIDE * deviation(resampled.map((shares) => shares[i].first)),
    totalError: WIDE * deviation(resampled.map((shares) => shares[i].total)),
  }));
}

function shares(blocks: readonly Block[], chosen: Uint32Array): { first: number; total: number }[] | null {
  const causes = blocks[0].length - 2;
  let mean = 0;
  for (const j of chosen) mean += (blocks[j][0] + blocks[j][1]) / 2 / chosen.length;
  let variance = 0;
  const first = new Float64Array(causes);
  const total = new Float64Array(causes);
  for (const j of chosen) {
    const [a, b, ...mixed] = blocks[j];
    variance += ((a - mean) ** 2 + (b - mean) ** 2) / 2;
    mixed.forEach((ab, i) => {
      first[i] += (b - mean) * (ab - a);
      total[i] += (a - ab) ** 2 / 2;
    });
  }
  if (!(variance > 1e-24 * mean * mean * chosen.length)) return null;
  return Array.from({ length: causes }, (_, i) => ({ first: first[i] / variance, total: total[i] / variance }));
}

function deviation(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
}
