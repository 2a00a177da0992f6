import { describe, expect, it } from 'vitest';
import { difference } from '../../src/geometry/boolean.ts';
import { area } from '../../src/geometry/region.ts';
import { shapeRing } from '../../src/geometry/ring.ts';
import type { Mesh } from '../../src/mesh/mesh.ts';
import { meshDomain } from '../../src/mesh/mesh-domain.ts';
import { components, meshFaults } from '../../src/mesh/validity.ts';

const box = (x: number, y: number, width: number, height: number) =>
  shapeRing({ rectangle: [width, height], centre: [x, y] }, { chord: 1 });
const disc = (x: number, y: number, diameter: number) =>
  shapeRing({ circle: diameter, centre: [x, y] }, { chord: 0.01 });

export function regionAreas({ x, y, triangles, region }: Mesh, regions: number): Float64Array {
  const areas = new Float64Array(regions + 1);
  for (let t = 0; t < region.length; t++) {
    const [a, b, c] = [triangles[3 * t], triangles[3 * t + 1], triangles[3 * t + 2]];
    areas[region[t]] += ((x[b] - x[a]) * (y[c] - y[a]) - (x[c] - x[a]) * (y[b] - y[a])) / 2;
  }
  return areas;
}

describe('mesh of a domain', () => {
  it('follows holes and overlapping regions with angles of 25 degrees and more', () => {
    const outline = difference([box(0, 0, 80, 50)], [disc(-20, 14, 8)]);
    const regions = [box(0, 0, 60, 40), box(10, 0, 3, 60), box(25, 5, 100, 6)];
    const mesh = meshDomain({ outline, regions }, () => 2);
    expect(meshFaults(mesh)).toEqual([]);
    expect(components(mesh).count).toBe(1);
    expect(mesh.minAngle).toBeGreaterThanOrEqual(25 - 1e-9);
    const areas = regionAreas(mesh, 3);
    const hole = area([disc(0, 0, 8)]);
    expect(areas[3]).toBeCloseTo(65 * 6, 8);
    expect(areas[2]).toBeCloseTo(3 * (50 - 6), 8);
    expect(areas[1]).toBeCloseTo(60 * 40 - 55 * 6 - 3 * 34 - hole, 8);
    expect(areas.reduce((sum, a) => sum + a, 0)).toBeCloseTo(area(outline), 8);
  });
});
