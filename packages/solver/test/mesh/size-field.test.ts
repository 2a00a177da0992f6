import { describe, expect, it } from 'vitest';
import { shapeRing } from '../../src/geometry/ring.ts';
import { sizeField } from '../../src/mesh/size-field.ts';

describe('size field', () => {
  const at = [3, -2] as const;
  const size = sizeField({ base: 4, sources: [{ at, size: 0.5 }], growth: 0.25 });

  it('is the source at its point, the base far away', () => {
    expect(size(...at)).toBeCloseTo(0.5, 12);
    expect(size(3 + 30, -2)).toBe(4);
    expect(size(1e9, 1e9)).toBe(4);
    expect(sizeField({ base: 4, sources: [], growth: 0.25 })(1, 2)).toBe(4);
    expect(sizeField({ base: 4, sources: [{ at, size: 9 }], growth: 0.25 })(...at)).toBe(4);
  });

  it('grows with distance at the rate asked for, within the error of the chamfer and one cell', () => {
    for (let angle = 0; angle < 6.3; angle += 0.1)
      for (const r of [2, 5, 8, 11]) {
        const there = size(3 + r * Math.cos(angle), -2 + r * Math.sin(angle));
        expect(there).toBeLessThanOrEqual(0.5 + 0.25 * 1.09 * r);
        expect(there).toBeGreaterThan(0.5 + 0.25 * (r - 1));
      }
  });

  it('never grows faster between any two points', () => {
    let steepest = 0;
    for (let x = -10; x < 20; x += 0.37)
      for (let y = -15; y < 15; y += 0.41)
        steepest = Math.max(
          steepest,
          Math.hypot(size(x + 0.01, y) - size(x, y), size(x, y + 0.01) - size(x, y)) / 0.01,
        );
    expect(steepest).toBeGreaterThan(0.2);
    expect(steepest).toBeLessThan(0.25 * Math.SQRT2 * 1.01);
  });

  it('follows a ring all along', () => {
    const ring = shapeRing({ rectangle: [40, 20] }, { chord: 1 });
    const field = sizeField({ base: 3, sources: [{ ring, size: 1 }], growth: 0.2 });
    for (let x = -20; x <= 20; x += 0.3) for (const y of [-10, 10]) expect(field(x, y)).toBeCloseTo(1, 12);
    expect(field(0, 0)).toBeGreaterThan(2.5);
  });

  it('refuses sizes that are no lengths', () => {
    for (const bad of [0, -1, Number.NaN, Number.POSITIVE_INFINITY])
      expect(() => sizeField({ base: bad, sources: [], growth: 0.25 })).toThrow(/positive/);
  });
});
