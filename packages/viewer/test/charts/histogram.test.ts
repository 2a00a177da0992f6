import { describe, expect, it } from 'vitest';
import { binned, labelLevels } from '../../src/charts/Histogram.tsx';

describe('bins of a histogram', () => {
  it('hold every value once, with an edge on the limit; a value at the limit is within', () => {
    const values = [30, 31, 31.5, 34, 35, 35.1, 36, 38];
    const bins = binned(values, 35);
    expect(bins.reduce((sum, { count }) => sum + count, 0)).toBe(values.length);
    expect(bins.some(({ to }) => Math.abs(to - 35) < 1e-12)).toBe(true);
    const within = bins.filter(({ to }) => to <= 35 + 1e-12).reduce((sum, { count }) => sum + count, 0);
    expect(within).toBe(5);
  });

  it('stand for values that do not scatter, and for none', () => {
    expect(binned([], 35)).toEqual([]);
    expect(binned([34, 34, 34], 35).reduce((sum, { count }) => sum + count, 0)).toBe(3);
  });
});

describe('labels of marks', () => {
  it('are all there, on as many lines as keep them apart', () => {
    expect(labelLevels([100, 300, 310, 330, 345])).toEqual([0, 0, 1, 2, 0]);
  });
});
