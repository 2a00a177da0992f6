import { describe, expect, it } from 'vitest';
import { capability, proportion, quantileEstimate } from '../../../src/studies/tolerance/sample-statistics.ts';

const upTo = (n: number): number[] => Array.from({ length: n }, (_, i) => i + 1);

describe('quantiles between order statistics', () => {
  // Binomial tables: n = 10, p = 1/2: P(X <= 1) = 11/1024 = 0.0107, P(X <= 2) = 56/1024 = 0.0547.
  it('of 10 values: the median lies between the 2nd and the 9th with 97.9 %, the most that is above 95 %', () => {
    expect(quantileEstimate(upTo(10), 0.5, 0.95)).toEqual({ value: 5.5, low: 2, high: 9 });
  });

  // 1 - 0.95^n = 0.95 takes n = 59: with 58 values the largest does not bound the 95 % point, two-sided at 90 %.
  it('of 58 and 59 values: only 59 bound the 95 % point from above with 95 %', () => {
    expect(quantileEstimate(upTo(58), 0.95, 0.9).high).toBeNull();
    expect(quantileEstimate(upTo(59), 0.95, 0.9).high).toBe(59);
  });
});

describe('capability', () => {
  // Mean 30, standard deviation 2 by hand: (-2, -2, 0, 2, 2) squares to 16, over n - 1 = 4.
  const values = [28, 28, 30, 32, 32];

  it('is (U - mean) / 3 sigma, or (mean - L) / 3 sigma', () => {
    expect(capability(values, 36, 'most', 0.95)!.value).toBeCloseTo(1, 12);
    expect(capability(values, 27, 'least', 0.95)!.value).toBeCloseTo(0.5, 12);
  });

  it('has the interval Cpu +- 1.96 sqrt(1/9n + Cpu^2/2(n - 1))', () => {
    const { low, high } = capability(values, 36, 'most', 0.95)!;
    expect(high! - 1).toBeCloseTo(1.959964 * Math.sqrt(1 / 45 + 1 / 8), 6);
    expect(1 - low!).toBeCloseTo(high! - 1, 12);
  });

  it('is none of figures that do not scatter', () => {
    expect(capability([3, 3, 3], 4, 'most', 0.95)).toBeNull();
  });
});

describe('share with the interval of Clopper and Pearson', () => {
  it('of none in n: up to 1 - 0.025^(1/n)', () => {
    expect(proportion(0, 20, 0.95)).toMatchObject({ value: 0, low: 0 });
    expect(proportion(0, 20, 0.95).high).toBeCloseTo(1 - 0.025 ** (1 / 20), 10);
    expect(proportion(20, 20, 0.95).low).toBeCloseTo(0.025 ** (1 / 20), 10);
  });

  // Tables: 5 of 10 gives 0.1871 to 0.8129; 1 of 10 gives 0.0025 to 0.4450.
  it('of 5 and of 1 in 10 as in tables', () => {
    const five = proportion(5, 10, 0.95);
    expect(five.low).toBeCloseTo(0.1871, 4);
    expect(five.high).toBeCloseTo(0.8129, 4);
    expect(proportion(1, 10, 0.95).low).toBeCloseTo(0.0025, 4);
    expect(proportion(1, 10, 0.95).high).toBeCloseTo(0.445, 4);
  });
});
