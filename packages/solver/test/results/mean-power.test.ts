import { describe, expect, it } from 'vitest';
import { meanPower } from '../../src/results/mean-power.ts';

/** Mean over the triangle by brute force: midpoints of n^2 equal triangles. */
function counted(s: readonly number[], m: number, n = 400): number {
  let sum = 0;
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n - i; j++) {
      const at = (a: number, b: number) => Math.max(0, s[0] + ((s[1] - s[0]) * a) / n + ((s[2] - s[0]) * b) / n) ** m;
      sum += at(i + 1 / 3, j + 1 / 3);
      if (i + j < n - 1) sum += at(i + 2 / 3, j + 2 / 3);
    }
  return sum / (n * n);
}

describe('mean of a power over a triangle', () => {
  it.each([1, 2, 5, 10, 20])('m = %d: barycentric coordinates, 2 i! j! k!/(i + j + k + 2)!', (m) => {
    // The power of one coordinate alone: 2/((m + 1)(m + 2)).
    for (const corners of [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ])
      expect(meanPower(corners[0], corners[1], corners[2], m)).toBeCloseTo(2 / ((m + 1) * (m + 2)), 14);
    // One less than it: (1 - l)^m has 2/(m + 2).
    expect(meanPower(1, 1, 0, m)).toBeCloseTo(2 / (m + 2), 13);
  });

  it.each([1, 7.3, 10, 20, 60])('m = %d: equal and nearly equal corners lose no digits', (m) => {
    expect(meanPower(3, 3, 3, m) / 3 ** m).toBeCloseTo(1, 12);
    for (const spread of [1e-12, 1e-9, 1e-6, 9e-5, 1.1e-4, 1e-3])
      for (const [a, b, c] of [
        [1, 1 - spread, 1 - spread],
        [1, 1, 1 - spread],
        [1, 1 - spread / 2, 1 - spread],
      ]) {
        // Second order about the mean: the variance of a linear field is the sum over pairs of (si - sj)^2, over 36.
        const mean = (a + b + c) / 3;
        const variance = ((a - b) ** 2 + (b - c) ** 2 + (c - a) ** 2) / 36;
        const expected = mean ** m * (1 + (m * (m - 1) * variance) / (2 * mean * mean));
        expect(Math.abs(meanPower(a, b, c, m) / expected - 1)).toBeLessThan(1e-11 + (m * spread) ** 3 / 50);
      }
  });

  it.each([
    [[3, 1, 2], 10],
    [[3, -1, 2], 4.5],
    [[1, -1, -4], 3],
    [[2, 2, -1], 12.5],
    [[0.2, 1, 0.9], 20],
    [[1, 0.8, 0.95], 20],
  ] as const)('corners %j, m = %d: as counted over 160,000 small triangles', (corners, m) => {
    expect(Math.abs(meanPower(corners[0], corners[1], corners[2], m) / counted(corners, m) - 1)).toBeLessThan(2e-3);
  });

  it('counts no compression', () => {
    expect(meanPower(-1, -2, 0, 10)).toBe(0);
  });
});
