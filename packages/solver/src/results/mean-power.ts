/** Spread of the corner values, relative to the largest, below which divided differences lose digits. */
const EVEN = 1e-4;

/**
 * Mean over a triangle of `s^m` where s is positive, s linear between its corner values; exact for any real m >= 1.
 *
 * The integral of a function of a linear field over a triangle is a divided difference of its second antiderivative
 * (Hermite-Genocchi): `mean = 2 [s1, s2, s3] g` with `g(s) = s^(m + 2) / ((m + 1)(m + 2))`, zero below s = 0.
 */
export function meanPower(s1: number, s2: number, s3: number, m: number): number {
  const top = Math.max(s1, s2, s3);
  if (!(top > 0)) return 0;
  const low = Math.min(s1, s2, s3) / top;
  const middle = (s1 + s2 + s3) / top - 1 - low;
  return top ** m * mean(low, middle, m);
}

/** The same for corner values low <= middle <= 1. */
function mean(low: number, middle: number, m: number): number {
  if (1 - low < EVEN) {
    // Midpoints of the sides: exact to the second order of the spread.
    const sides = ((low + middle) / 2) ** m + ((low + 1) / 2) ** m + ((middle + 1) / 2) ** m;
    return sides / 3;
  }
  return ((2 / ((m + 1) * (m + 2))) * (slope(middle, 1, m + 2) - slope(low, middle, m + 2))) / (1 - low);
}

/** Divided difference of s^n between a <= b, s = 0 below zero: `(b^n - a^n)/(b - a)` without its cancellation. */
function slope(a: number, b: number, n: number): number {
  if (b <= 0) return 0;
  if (a <= 0) return b ** n / (b - a);
  if (a === b) return n * b ** (n - 1);
  return (-(b ** n) * Math.expm1(n * Math.log1p((a - b) / b))) / (b - a);
}
