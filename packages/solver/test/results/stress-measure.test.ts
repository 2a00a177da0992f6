import { describe, expect, it } from 'vitest';
import { equivalent, tension } from '../../src/results/stress-measure.ts';
import { holePeaks } from '../../src/section/hole-concentration.ts';

/** Read from the fourth number on; what stands before and behind is of other places. */
const at = 3;
const stress = (sxx: number, syy: number, sxy: number) =>
  Float64Array.of(700, -800, 900, sxx, syy, sxy, -600, 500, 400);
const holes = holePeaks({ pitch: 1, diameter: 0.5, pattern: 'square' });

describe('what a plane stress comes to', () => {
  it('without holes is the largest principal stress, or that of von Mises', () => {
    // Principal stresses (60, -20) at any angle: sqrt(60^2 + 60 20 + 20^2) = sqrt(5200).
    const skew = stress(20 + 40 * Math.cos(1), 20 - 40 * Math.cos(1), 40 * Math.sin(1));
    expect(tension(skew, at, null)).toBeCloseTo(60, 9);
    expect(equivalent(skew, at, null)).toBeCloseTo(Math.sqrt(5200), 9);
  });

  it('at the edge of a hole is one stress along it: pulled or pressed alike where the material yields', () => {
    for (const [sxx, syy, sxy] of [
      [50, 0, 0],
      [0, 50, 0],
      [30, -10, 0],
      [-40, -30, 12],
    ]) {
      const [pulled, pressed] = [stress(sxx, syy, sxy), stress(-sxx, -syy, -sxy)];
      const larger = Math.max(tension(pulled, at, holes), tension(pressed, at, holes));
      expect(equivalent(pulled, at, holes)).toBeCloseTo(larger, 9);
      expect(equivalent(pressed, at, holes)).toBeCloseTo(larger, 9);
    }
  });

  it('is more than three times a pull along the pitch, the least that a hole does (Kirsch 1898)', () => {
    expect(equivalent(stress(-50, 0, 0), at, holes)).toBeGreaterThan(150);
    expect(equivalent(stress(0, -50, 0), at, holes)).toBeGreaterThan(150);
  });
});
