import { describe, expect, it } from 'vitest';
import type { HoleArray } from '../../src/section/hole-array.ts';
import { holePeaks, peakTension } from '../../src/section/hole-concentration.ts';

const array = (pattern: HoleArray['pattern'], mu: number, angle = 0): HoleArray => ({
  pitch: 1,
  diameter: 1 - mu,
  pattern,
  angle,
});
const relative = (value: number, expected: number) => Math.abs(value / expected - 1);

describe('tension at hole edges', () => {
  // Derived on their own, periodic unit cell in plane stress: biaxial and uniaxial along the rows.
  it.each([
    ['square', 0.3, 4.07, 4.26],
    ['square', 0.5, 2.67, 3.28],
    ['triangular', 0.3, 3.97, 7.69],
    ['triangular', 0.5, 2.63, 4.41],
  ] as const)('%s, mu = %d: biaxial %d, uniaxial %d', (pattern, mu, biaxial, uniaxial) => {
    const peaks = holePeaks(array(pattern, mu));
    expect(relative(peakTension(peaks, 1, 1, 0), biaxial)).toBeLessThan(0.005);
    expect(relative(peakTension(peaks, 1, 0, 0), uniaxial)).toBeLessThan(0.005);
  });

  // The same cell between the entries of the table: xx, yy, xx - yy, yy - xx and shear.
  it.each([
    ['square', 0.25, [4.754, 4.845, 4.845, 4.936, 4.936, 13.273]],
    ['square', 0.35, [3.57, 3.876, 3.876, 4.183, 4.183, 9.399]],
    ['triangular', 0.25, [4.668, 9.343, 5.927, 15.162, 8.157, 13.292]],
    ['triangular', 0.35, [3.459, 6.481, 4.01, 9.932, 4.983, 8.601]],
  ] as const)('%s, mu = %d: within 4 %% between the entries', (pattern, mu, expected) => {
    const peaks = holePeaks(array(pattern, mu));
    const states = [
      [1, 1, 0],
      [1, 0, 0],
      [0, 1, 0],
      [1, -1, 0],
      [-1, 1, 0],
      [0, 0, 1],
    ];
    states.forEach(([sxx, syy, sxy], i) => {
      expect(relative(peakTension(peaks, sxx, syy, sxy), expected[i])).toBeLessThan(0.04);
    });
  });

  it('is an upper estimate: pulled along the diagonal of a square array, at most 8 % above the cell', () => {
    // Uniaxial at 45 degrees to the rows, the same cell: worst of all directions.
    for (const [mu, cell] of [
      [0.2, 11.26],
      [0.3, 7.06],
      [0.5, 4.49],
    ]) {
      const bound = peakTension(holePeaks(array('square', mu)), 0.5, 0.5, 0.5);
      expect(bound).toBeGreaterThan(0.995 * cell);
      expect(bound).toBeLessThan(1.08 * cell);
    }
  });

  it('grows no faster than the stresses added, scales with them, and turns with the rows', () => {
    const peaks = holePeaks(array('triangular', 0.37, 17));
    const states = Array.from({ length: 24 }, (_, k) => [Math.sin(k), Math.cos(3 * k), Math.sin(5 * k + 1)] as const);
    for (const a of states)
      for (const b of states) {
        const sum = peakTension(peaks, a[0] + b[0], a[1] + b[1], a[2] + b[2]);
        expect(sum).toBeLessThanOrEqual(peakTension(peaks, ...a) + peakTension(peaks, ...b) + 1e-12);
      }
    expect(peakTension(peaks, 2, -4, 6)).toBeCloseTo(2 * peakTension(peaks, 1, -2, 3), 12);
    // Rows turned by a quarter turn see x as y.
    const turned = holePeaks(array('triangular', 0.4, 90));
    const straight = holePeaks(array('triangular', 0.4));
    expect(peakTension(turned, 3, 1, 0.5)).toBeCloseTo(peakTension(straight, 1, 3, -0.5), 12);
    // Along rows at 30 degrees.
    const [c, s] = [Math.cos(Math.PI / 6), Math.sin(Math.PI / 6)];
    expect(peakTension(holePeaks(array('square', 0.4, 30)), c * c, s * s, c * s)).toBeCloseTo(3.608, 9);
  });

  it('changes by little where its table has entries and ends', () => {
    for (const pattern of ['square', 'triangular'] as const)
      for (const mu of [0.2, 0.3, 0.5, 0.6]) {
        const [at, ...beside] = [mu, mu - 1e-7, mu + 1e-7].map((m) =>
          peakTension(holePeaks(array(pattern, m)), 1, 0.3, 0.2),
        );
        for (const value of beside) expect(relative(value, at)).toBeLessThan(1e-5);
      }
  });

  it('is alike pressed along and across the rows of a square array, and no more than at a hole alone', () => {
    // Kirsch 1898: pressed from two sides, a hole alone is pulled by as much at the two others.
    for (const mu of [0.2, 0.35, 0.6]) {
      const peaks = holePeaks(array('square', mu));
      const along = peakTension(peaks, -1, 0, 0);
      expect(peakTension(peaks, 0, -1, 0)).toBeCloseTo(along, 12);
      expect(along).toBeGreaterThan(0);
      expect(along).toBeLessThan(1);
    }
  });

  it('leaves no tension under equal compression', () => {
    expect(peakTension(holePeaks(array('square', 0.3)), -1, -1, 0)).toBe(0);
  });
});
