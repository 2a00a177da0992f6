import { describe, expect, it } from 'vitest';
import { type Distribution, quantileOf, readDistribution } from '../../../src/studies/tolerance/distribution.ts';
import { faultOf } from '../../model/fault-of.ts';

/** Mean and standard deviation over evenly spaced shares. */
function moments(distribution: Distribution): { mean: number; sigma: number } {
  const inverse = quantileOf(distribution, 'x');
  const values = Array.from({ length: 20_000 }, (_, i) => inverse((i + 0.5) / 20_000));
  const mean = values.reduce((sum, x) => sum + x, 0) / values.length;
  return { mean, sigma: Math.sqrt(values.reduce((sum, x) => sum + (x - mean) ** 2, 0) / values.length) };
}

describe('distributions have the moments of their formulas', () => {
  it.each<[string, number, number]>([
    ['normal(4.5, 0.02)', 4.5, 0.02],
    ['tolerance(4.5, 0.06)', 4.5, 0.02],
    ['tolerance(4.5, 0.05, 2)', 4.5, 0.025],
    ['uniform(2, 5)', 3.5, 3 / Math.sqrt(12)],
    // Triangular: mean (a + b + c)/3, variance (a^2 + b^2 + c^2 - ab - ac - bc)/18.
    ['triangular(1, 2, 5)', 8 / 3, Math.sqrt((1 + 4 + 25 - 2 - 5 - 10) / 18)],
    ['triangular(1, 1, 4)', 2, Math.sqrt(0.5)],
    // Cut at +-1 sigma: variance 1 - 2 phi(1)/(2 Phi(1) - 1), phi(1) = 0.2419707, Phi(1) = 0.8413447.
    ['truncated(10, 1, 9, 11)', 10, Math.sqrt(1 - (2 * 0.2419707) / 0.6826895)],
  ])('%s', (text, mean, sigma) => {
    const found = moments(readDistribution(text));
    expect(found.mean).toBeCloseTo(mean, 4);
    expect(found.sigma / sigma).toBeCloseTo(1, 3);
  });

  it('and the quantiles of tables: Phi^-1(0.975) = 1.959964, 0.9 of triangular(0, 1, 2) at 2 - sqrt(0.2)', () => {
    expect(quantileOf(readDistribution('normal(0, 1)'), 'x')(0.975)).toBeCloseTo(1.959964, 6);
    expect(quantileOf(readDistribution('triangular(0, 1, 2)'), 'x')(0.9)).toBeCloseTo(2 - Math.sqrt(0.2), 12);
  });
});

describe('a distribution that is none is refused', () => {
  it.each(['normal(1)', 'normal(a, b)', 'gauss(1, 2)', 'uniform(1, 2', 'uniform(,)', 'normal'])('%s', (text) => {
    expect(faultOf(() => readDistribution(text)).code).toBe('USAGE');
  });

  it.each<Distribution>([
    { uniform: [2, 1] },
    { triangular: [1, 5, 2] },
    { normal: { mean: 1 } },
    { normal: { mean: 1, sigma: 1, tolerance: 1 } },
    { normal: { mean: 0, sigma: 1, within: [50, 60] } },
    { normal: { mean: 0, sigma: 1, within: [1, 0] } },
  ])('%j', (distribution) => {
    const fault = faultOf(() => quantileOf(distribution, 'thickness'));
    expect(fault.message).toContain('thickness');
  });
});
