import { describe, expect, it } from 'vitest';
import type { Ring } from '../../src/geometry/point.ts';
import { sectionIndex } from '../../src/structure/section-index.ts';

/** Four triangles about (10, 20), the middle of a square of side 6: below, right, above, left, with centroids 2 from it. */
const mesh = {
  x: Float64Array.of(7, 13, 13, 7, 10),
  y: Float64Array.of(17, 17, 23, 23, 20),
  triangles: Uint32Array.of(0, 1, 4, 1, 2, 4, 2, 3, 4, 3, 0, 4),
  boundary: new Uint32Array(0),
  minAngle: 45,
};
const box = (x0: number, x1: number, y0: number, y1: number): Ring => [
  [10 + x0, 20 + y0],
  [10 + x1, 20 + y0],
  [10 + x1, 20 + y1],
  [10 + x0, 20 + y1],
];
const [all, right, upper] = [box(-3, 3, -3, 3), box(1, 3, -1, 1), box(-1, 3, -1, 3)];
const at = (region: number[], regions: Ring[]) => [
  ...sectionIndex({ ...mesh, region: Uint32Array.from(region) }, regions),
];

describe('section of a triangle', () => {
  it('is that of its region where no area hides it', () => {
    expect(at([0, 1, 2, 0], [right, upper])).toEqual([0, 1, 2, 0]);
    // The mesh has the say there, wherever the centroid lies.
    expect(at([2, 0, 0, 1], [right, upper])).toEqual([2, 0, 0, 1]);
  });

  it('is that of the last region that holds it where an area does', () => {
    expect(at([3, 3, 3, 3], [right, upper])).toEqual([0, 2, 2, 0]);
    expect(at([3, 3, 4, 4], [upper, right])).toEqual([0, 2, 1, 0]);
    expect(at([2, 2, 2, 2], [all])).toEqual([1, 1, 1, 1]);
    expect(at([1, 1, 1, 1], [])).toEqual([0, 0, 0, 0]);
  });
});
