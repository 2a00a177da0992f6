import { describe, expect, it } from 'vitest';
import { limitScale, plainScale } from '../../src/buffers/colour-scale.ts';

describe('scale of colours', () => {
  it('goes on beyond the limit to a round multiple of it that holds the largest value', () => {
    // 80.1 of 35 is 2.29; 69.9 is 1.997.
    expect(limitScale(35, 80.1).top).toBe(2.5 * 35);
    expect(limitScale(35, 69.9).top).toBe(2 * 35);
    expect(limitScale(35, 70).top).toBe(2 * 35);
    expect(limitScale(10, 1234).top).toBe(1250);
    for (let k = 0; k < 200; k++) {
      const largest = 1.07 ** k;
      const { top, limit } = limitScale(3, largest);
      expect(limit).toBe(3);
      expect(top).toBeGreaterThanOrEqual(largest);
      expect(top).toBeLessThanOrEqual(Math.max(3.75, 1.34 * largest));
    }
  });

  it('keeps a piece beyond the limit where nothing is', () => {
    expect(limitScale(35, 0)).toEqual({ limit: 35, top: 43.75, largest: 0 });
    expect(plainScale(7)).toEqual({ limit: null, top: 7, largest: 7 });
  });
});
