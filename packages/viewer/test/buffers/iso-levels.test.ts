import { describe, expect, it } from 'vitest';
import { automaticExaggeration, roundDown } from '../../src/buffers/exaggeration.ts';
import { isoLevels, isoStep } from '../../src/buffers/iso-levels.ts';

describe('isoStep', () => {
  it('is a round number of um with 4 to 10 steps below any limit', () => {
    for (let limit = 0.001; limit < 1; limit *= 1.07) {
      const um = isoStep(limit) * 1000;
      const lead = um / 10 ** Math.floor(Math.log10(um) + 1e-9);
      expect([1, 2, 5]).toContain(Number(lead.toFixed(9)));
      expect(limit / isoStep(limit)).toBeGreaterThanOrEqual(4 - 1e-6);
      expect(limit / isoStep(limit)).toBeLessThan(10 + 1e-6);
    }
  });

  it('is 5 um for the limit of 35 um', () => {
    expect(isoStep(0.035)).toBeCloseTo(0.005, 12);
    expect(isoLevels(0.035, 0.035).map((level) => Math.round(level * 1e6) / 1e3)).toEqual([
      0, 5, 10, 15, 20, 25, 30, 35,
    ]);
  });
});

describe('automaticExaggeration', () => {
  it('hangs on the limit, so that a stiffer head looks flatter', () => {
    expect(automaticExaggeration(100, 0.035, 0.03)).toBe(automaticExaggeration(100, 0.035, 0.02));
    expect(automaticExaggeration(100, 0.035, 0.03)).toBe(100);
  });

  it('tames a head far over its limit', () => {
    expect(automaticExaggeration(100, 0.035, 3)).toBe(5);
    expect(automaticExaggeration(100, 0.035, 0)).toBe(100);
  });

  it('rounds down to 1, 2, 5', () => {
    expect([1, 1.9, 2, 4.99, 5, 9.9, 10, 512].map(roundDown)).toEqual([1, 1, 2, 2, 5, 5, 10, 500]);
  });
});
