import { describe, expect, it } from 'vitest';
import type { Ring } from '../../src/geometry/point.ts';
import { ringArea } from '../../src/geometry/region.ts';
import { meshDomain } from '../../src/mesh/mesh-domain.ts';
import { sizeField } from '../../src/mesh/size-field.ts';

/** Half diagonals, element size and two places the mesh is graded to, from problems that once hung or were refused. */
const rhombi = {
  'one that hung': [62.027703958391044, 15.765910745979756, 4.193603980839253, 14.734387175519828, 41.96876739806476],
  'one refused as not to be followed': [
    60.43938011030144, 21.049497188353413, 2.0701286602020263, 21.0049156791817, 39.39841846111917,
  ],
} as const;

describe('sides cut into pieces that are collinear but for rounding', () => {
  for (const [name, [dx, dy, base, yLoad, xLoad]] of Object.entries(rhombi))
    it(`are followed: a rhombus, ${name}`, () => {
      const ring: Ring = [
        [dx, 0],
        [0, dy],
        [-dx, 0],
        [0, -dy],
      ];
      const sources = [
        { at: [0, yLoad] as const, size: base / 3 },
        { at: [xLoad, 0] as const, size: base / 3 },
      ];
      const mesh = meshDomain({ outline: [ring], regions: [] }, sizeField({ base, sources, growth: 0.25 }));
      const corners = Array.from(mesh.triangles, (node) => [mesh.x[node], mesh.y[node]] as const);
      let area = 0;
      for (let c = 0; c < corners.length; c += 3) area += ringArea(corners.slice(c, c + 3));
      expect(area / ringArea(ring)).toBeCloseTo(1, 9);
      expect(mesh.minAngle).toBeGreaterThan(20);
    });
});
