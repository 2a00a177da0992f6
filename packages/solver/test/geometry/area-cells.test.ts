import { describe, expect, it } from 'vitest';
import { areaCells } from '../../src/geometry/area-cells.ts';
import { intersection } from '../../src/geometry/boolean.ts';
import { area, centroid } from '../../src/geometry/region.ts';
import { shapeRing } from '../../src/geometry/ring.ts';
import type { Shape } from '../../src/geometry/shape.ts';

const ring = (shape: Shape) => shapeRing(shape, { chord: 0.01 });
const angle: Shape = {
  polygon: [
    [0, 0],
    [20, 0],
    [20, 3],
    [3, 3],
    [3, 12],
    [0, 12],
  ],
};

describe('areaCells', () => {
  it.each([
    ['a square', { rectangle: [6, 6] }, 9, 9],
    ['a land', { rectangle: [40, 2], centre: [5, 7] }, 9, 13],
    ['a disc', { circle: 6, centre: [-50, 0] }, 9, 9],
    ['an angle', angle, 12, 20],
  ] as [string, Shape, number, number][])(
    'cuts %s into cells that do not overlap and together are the whole',
    (_, shape, count, most) => {
      const whole = ring(shape);
      const cells = areaCells([whole], count);
      expect(cells.length).toBeGreaterThanOrEqual(count);
      expect(cells.length).toBeLessThanOrEqual(most);
      expect(cells.reduce((sum, cell) => sum + area([cell]), 0)).toBeCloseTo(area([whole]), 6);
      const moment = (axis: 0 | 1) => cells.reduce((sum, cell) => sum + area([cell]) * centroid([cell])[axis], 0);
      expect(moment(0) / area([whole])).toBeCloseTo(centroid([whole])[0], 6);
      expect(moment(1) / area([whole])).toBeCloseTo(centroid([whole])[1], 6);
      cells.forEach((cell, i) => {
        for (const other of cells.slice(0, i)) expect(area(intersection([cell], [other]))).toBeLessThan(1e-9);
      });
    },
  );

  it('gives few cells to a thin slanting strip', () => {
    const strip = ring({
      polygon: [
        [0, 0],
        [0.1, 0],
        [100, 100],
        [99.9, 100],
      ],
    });
    const cells = areaCells([strip], 9);
    expect(cells.length).toBeLessThan(100);
    expect(cells.reduce((sum, cell) => sum + area([cell]), 0)).toBeCloseTo(area([strip]), 6);
  });
});
