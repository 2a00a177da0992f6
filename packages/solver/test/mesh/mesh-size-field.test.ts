import { describe, expect, it } from 'vitest';
import { locator } from '../../src/mesh/locate.ts';
import { meshDomain } from '../../src/mesh/mesh-domain.ts';
import { meshSizeField } from '../../src/mesh/mesh-size-field.ts';

const ell = meshDomain(
  {
    outline: [
      [
        [0, 0],
        [20, 0],
        [20, 10],
        [10, 10],
        [10, 20],
        [0, 20],
      ],
    ],
    regions: [],
  },
  () => 1.5,
);
const find = locator(ell);

describe('size field on a mesh', () => {
  it('is linear between nodes, wherever it was asked before', () => {
    const field = meshSizeField(
      ell,
      find,
      ell.x.map((x, i) => 1 + 0.05 * x + 0.02 * ell.y[i]),
      0.3,
    );
    for (const [x, y] of [
      [1, 19],
      [19, 1],
      [9.9, 9.9],
      [3.3, 15],
      [15, 3.3],
    ])
      expect(field(x, y)).toBeCloseTo(1 + 0.05 * x + 0.02 * y, 12);
  });

  it('takes the nearest boundary node off the mesh', () => {
    const field = meshSizeField(
      ell,
      find,
      ell.x.map((x) => 1 + 0.05 * x),
      0.3,
    );
    expect(field(20.4, -0.3)).toBeCloseTo(2, 12);
  });

  it('grows no faster than allowed', () => {
    const nodal = ell.x.map((x, i) => (Math.hypot(x, ell.y[i]) < 1e-9 ? 0.1 : 9));
    const field = meshSizeField(ell, find, nodal, 0.3);
    expect(field(0, 0)).toBeCloseTo(0.1, 12);
    for (const r of [1, 2, 4, 8]) expect(field(r, 0)).toBeLessThan(0.1 + 0.3 * r * 1.0001);
    expect(field(8, 0)).toBeGreaterThan(0.1 + 0.3 * 6);
  });
});
