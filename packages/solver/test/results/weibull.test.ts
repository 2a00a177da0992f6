import { describe, expect, it } from 'vitest';
import { barArea, gamma, unitAreaStrength } from '../../src/results/weibull.ts';

describe('Weibull', () => {
  it('has the gamma function of the tables', () => {
    expect(gamma(1.5)).toBeCloseTo(Math.sqrt(Math.PI) / 2, 13);
    expect(gamma(2)).toBeCloseTo(1, 13);
    expect(gamma(5)).toBeCloseTo(24, 11);
    // Abramowitz and Stegun, Table 6.1.
    expect(gamma(1.1)).toBeCloseTo(0.9513507699, 10);
    expect(gamma(1.05)).toBeCloseTo(0.9735042656, 10);
  });

  it('scales the strength of the bar to unit area and from mean to characteristic', () => {
    const bar = { strength: 300, is: 'characteristic', modulus: 10 } as const;
    const one = unitAreaStrength(bar);
    // ASTM C1239: equal risk, (300/one)^m S_E = 1.
    expect((300 / one) ** 10 * ((40 * (4 + 3 / 11) * 12) / 22)).toBeCloseTo(1, 12);
    expect(unitAreaStrength({ ...bar, is: 'mean' }) / one).toBeCloseTo(1 / 0.9513507699, 9);
    // A bar that never varies: all of the inner span counts, and its whole face half of the rest.
    expect(barArea(1e9)).toBeCloseTo((40 * 4) / 2, 6);
  });
});
