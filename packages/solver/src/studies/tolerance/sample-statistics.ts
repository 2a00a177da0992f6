import binomial from '@stdlib/stats-base-dists-binomial-cdf';
import normal from '@stdlib/stats-base-dists-normal-quantile';
import { bracketedRoot } from '../bracketed-root.ts';

/** To which a share is solved for. */
const PRECISE = 1e-12;

/** A figure and the interval that holds the true one with the confidence asked for; null at an end that it can't give. */
export interface Estimate {
  readonly value: number;
  readonly low: number | null;
  readonly high: number | null;
}

export function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** Standard deviation of a sample, with n - 1. */
export function deviationOf(values: readonly number[]): number {
  const mean = meanOf(values);
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
}

/**
 * Quantile of a sample, interpolated between neighbours (Hyndman and Fan 1996, type 7), with an interval between two of the
 * sorted values, whatever the distribution: `P(x_(l) <= q <= x_(u)) = P(l <= Binomial(n, p) < u)` (David and Nagaraja, Order
 * Statistics; from memory).
 *
 * @param sorted ascending
 */
export function quantileEstimate(sorted: readonly number[], p: number, confidence: number): Estimate {
  const n = sorted.length;
  const place = (n - 1) * p;
  const below = Math.floor(place);
  const value = sorted[below] + (place - below) * (sorted[Math.min(n - 1, below + 1)] - sorted[below]);
  const tail = (1 - confidence) / 2;
  // Most l with P(Binomial < l) <= tail, least u with P(Binomial >= u) <= tail.
  const l = firstCount(n, (k) => binomial(k, n, p) > tail);
  const u = firstCount(n, (k) => 1 - binomial(k, n, p) <= tail) + 1;
  return { value, low: l < 1 ? null : sorted[l - 1], high: u > n ? null : sorted[u - 1] };
}

/** Least k from 0 to n for which an ascending condition holds. */
function firstCount(n: number, holds: (k: number) => boolean): number {
  let [low, high] = [0, n];
  while (low < high) {
    const k = (low + high) >> 1;
    if (holds(k)) high = k;
    else low = k + 1;
  }
  return low;
}

/**
 * One-sided capability `Cpu = (U - mean) / 3 sigma`, or `(mean - L) / 3 sigma` against a lower limit, of figures that are
 * normally distributed, with the interval of Bissell 1990 (Appl. Statist. 39; from memory):
 * `Cpu +- z sqrt(1 / 9n + Cpu^2 / 2(n - 1))`.
 *
 * @returns null when the figures do not scatter
 */
export function capability(
  values: readonly number[],
  limit: number,
  bound: 'most' | 'least',
  confidence: number,
): Estimate | null {
  const n = values.length;
  const [mean, sigma] = [meanOf(values), deviationOf(values)];
  if (!(sigma > 1e-12 * Math.abs(mean))) return null;
  const value = (bound === 'most' ? limit - mean : mean - limit) / (3 * sigma);
  const half = normal((1 + confidence) / 2, 0, 1) * Math.sqrt(1 / (9 * n) + value ** 2 / (2 * (n - 1)));
  return { value, low: value - half, high: value + half };
}

/**
 * Share of `count` in n with the interval of Clopper and Pearson 1934 (Biometrika 26), which is never too narrow: the shares
 * at which so many or more, or so many or fewer, would have half the chance that is left.
 */
export function proportion(count: number, n: number, confidence: number): Estimate {
  const tail = (1 - confidence) / 2;
  const shareAt = (chance: (share: number) => number): number =>
    bracketedRoot(
      (share) => chance(share) - tail,
      { x: 0, f: chance(0) - tail },
      { x: 1, f: chance(1) - tail },
      PRECISE,
    );
  return {
    value: count / n,
    low: count === 0 ? 0 : shareAt((share) => 1 - binomial(count - 1, n, share)),
    high: count === n ? 1 : shareAt((share) => binomial(count, n, share)),
  };
}
