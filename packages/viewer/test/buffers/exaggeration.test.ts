import { describe, expect, it } from 'vitest';
import { automaticExaggeration } from '../../src/buffers/exaggeration.ts';

const [length, limit] = [72, 0.035];

describe('automatic factor on the deflection', () => {
  it('hangs on the limit about it, so that a stiffer head looks flatter', () => {
    expect(automaticExaggeration(length, limit, 0.08)).toBe(automaticExaggeration(length, limit, 0.04));
  });

  it('keeps a small bow from being drawn flat, and a large one from leaving the picture', () => {
    for (const largest of [0.002, 0.0066, 0.015, 0.08, 0.9]) {
      const rise = (automaticExaggeration(length, limit, largest) * largest) / length;
      // Rounded down to 1, 2 or 5 times a power of ten: by less than 2.5.
      expect(rise).toBeGreaterThan(0.018 / 2.5);
      expect(rise).toBeLessThan(0.16);
    }
    // What is as good as flat stays so.
    expect(automaticExaggeration(length, limit, 1e-6)).toBe(1000);
    // Before there is an answer, that of the limit: 0.045 of 72 mm over 0.035 mm, rounded down.
    expect(automaticExaggeration(length, limit, 0)).toBe(50);
  });

  it('does not follow the bow while a drag lasts, but for one that would leave the picture', () => {
    const before = automaticExaggeration(length, limit, 0.006);
    expect(automaticExaggeration(length, limit, 0.003, 0.006)).toBe(before);
    expect(automaticExaggeration(length, limit, 0.02, 0.006)).toBe(before);
    expect(automaticExaggeration(length, limit, 0.9, 0.006)).toBeLessThan(before);
  });
});
