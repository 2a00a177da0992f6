import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { areaRow, discRow, everywhereRow, lineRow, pointRow, spanOf } from '../../src/assembly/rows.ts';
import { insideRing } from '../../src/geometry/inside.ts';
import type { Point, Ring } from '../../src/geometry/point.ts';
import type { SparseRow } from '../../src/linear-algebra/block-matrix.ts';
import { dotRow } from '../../src/linear-algebra/sparse-row.ts';
import { locator } from '../../src/mesh/locate.ts';
import type { Mesh } from '../../src/mesh/mesh.ts';
import { discMesh, irregularMesh } from './sample-meshes.ts';

const mesh = irregularMesh(8);
const find = locator(mesh);

/** Dofs of a quadratic deflection, which the interpolation holds exactly: `c . [1, x, y, x^2, x y, y^2]`. */
const quadratic = ({ x, y }: Mesh, [a, b, c, d, e, f]: readonly number[]): Float64Array =>
  Float64Array.from({ length: 3 * x.length }, (_, i) => {
    const [px, py] = [x[Math.floor(i / 3)], y[Math.floor(i / 3)]];
    if (i % 3 === 0) return a + b * px + c * py + d * px * px + e * px * py + f * py * py;
    return i % 3 === 1 ? c + e * px + 2 * f * py : -(b + 2 * d * px + e * py);
  });
const fields = [
  [1, 0, 0, 0, 0, 0],
  [0, 1, 0, 0, 0, 0],
  [0, 0, 1, 0, 0, 0],
  [0, 0, 0, 1, 0, 0],
  [0, 0, 0, 0, 1, 0],
  [0, 0, 0, 0, 0, 1],
];

/** Integral of x^p y^q over a ring by Green's theorem, `contour integral of x^(p+1)/(p+1) y^q dy`, Gauss exact to degree 5. */
function monomial(ring: Ring, p: number, q: number): number {
  let sum = 0;
  ring.forEach(([x0, y0], i) => {
    const [x1, y1] = ring[(i + 1) % ring.length];
    for (const [s, weight] of [
      [-Math.sqrt(0.6), 5 / 18],
      [0, 8 / 18],
      [Math.sqrt(0.6), 5 / 18],
    ]) {
      const t = (1 + s) / 2;
      sum += (weight * (x0 + t * (x1 - x0)) ** (p + 1) * (y0 + t * (y1 - y0)) ** q * (y1 - y0)) / (p + 1);
    }
  });
  return sum;
}
const powers = [
  [0, 0],
  [1, 0],
  [0, 1],
  [2, 0],
  [1, 1],
  [0, 2],
];

/** Largest error of a row on the six quadratics against their true integrals, relative to the size of the plate. */
function worst(row: SparseRow, plate: Mesh, exact: readonly number[]): number {
  return Math.max(...fields.map((field, k) => Math.abs(dotRow(row, quadratic(plate, field)) - exact[k])));
}

describe('rows over areas', () => {
  it.each<[string, Ring]>([
    [
      'inside one element',
      [
        [3.31, 3.3],
        [3.36, 3.31],
        [3.33, 3.38],
      ],
    ],
    [
      'across many elements',
      [
        [1.3, 0.7],
        [8.9, 2.2],
        [7.4, 9.3],
        [2.1, 6.6],
      ],
    ],
    [
      'clockwise',
      [
        [2.1, 6.6],
        [7.4, 9.3],
        [8.9, 2.2],
        [1.3, 0.7],
      ],
    ],
    [
      'concave',
      [
        [1, 1],
        [9, 1.5],
        [5.2, 3.1],
        [8.7, 9],
        [4.1, 4.4],
        [0.8, 8.3],
        [2.6, 3.9],
      ],
    ],
    [
      'along element sides',
      [
        [0, 0],
        [5, 0],
        [5, 5],
        [0, 5],
      ],
    ],
  ])('integrate every quadratic exactly, %s', (_, ring) => {
    const sense = Math.sign(monomial(ring, 0, 0));
    const exact = powers.map(([p, q]) => sense * monomial(ring, p, q));
    expect(worst(areaRow(mesh, find, ring, ''), mesh, exact)).toBeLessThan(1e-9);
  });

  it('integrate any deflection, with each element as far as it reaches', () => {
    const u = Float64Array.from({ length: 3 * mesh.x.length }, (_, i) => Math.sin(i * i));
    // Twelve-sided, so that elements are cut, crossed and swallowed whole; against the mean over a fine grid.
    const ring = Array.from(
      { length: 12 },
      (_, c): Point => [5 + 3.3 * Math.cos(c / 1.91), 5 + 2.1 * Math.sin(c / 1.91)],
    );
    let sum = 0;
    for (let i = 0; i < 200; i++)
      for (let j = 0; j < 200; j++) {
        const at: Point = [1.5 + (7 * (i + 0.5)) / 200, 2.5 + (5 * (j + 0.5)) / 200];
        if (insideRing(ring, at[0], at[1])) sum += (35 / 40000) * dotRow(pointRow(mesh, find, at, ''), u);
      }
    expect(Math.abs(dotRow(areaRow(mesh, find, ring, ''), u) - sum)).toBeLessThan(5e-3);
  });

  it('integrate only what is on the plate', () => {
    const row = areaRow(
      mesh,
      find,
      [
        [5, -7],
        [15, -7],
        [15, 4],
        [5, 4],
      ],
      '',
    );
    const onPlate: Ring = [
      [5, 0],
      [10, 0],
      [10, 4],
      [5, 4],
    ];
    expect(
      worst(
        row,
        mesh,
        powers.map(([p, q]) => monomial(onPlate, p, q)),
      ),
    ).toBeLessThan(1e-10);
  });

  it('share a force out without loss, whatever the patch', () => {
    const coordinate = fc.double({ min: 0.05, max: 9.95, noNaN: true });
    fc.assert(
      fc.property(
        coordinate,
        coordinate,
        fc.double({ min: 0.01, max: 5, noNaN: true }),
        fc.integer({ min: 3, max: 40 }),
        (x, y, r, corners) => {
          const inside = Math.min(r, x, y, 10 - x, 10 - y);
          const ring: Point[] = Array.from({ length: corners }, (_, c) => [
            x + inside * Math.cos((2 * Math.PI * c) / corners),
            y + inside * Math.sin((2 * Math.PI * c) / corners),
          ]);
          const area = monomial(ring, 0, 0);
          const row = areaRow(mesh, find, ring, '');
          expect(Math.abs(spanOf(row) / area - 1)).toBeLessThan(1e-11);
          const force = row.value.map((v) => (120 * v) / spanOf(row));
          expect(Math.abs(spanOf({ dof: row.dof, value: force }) - 120)).toBeLessThan(120e-12);
          // Its moment about the origin is that of the force at the centroid.
          const tilt = quadratic(mesh, [0, 1, 0, 0, 0, 0]);
          expect(Math.abs(dotRow({ dof: row.dof, value: force }, tilt) - 120 * x)).toBeLessThan(1e-9);
        },
      ),
      { seed: 3, numRuns: 200 },
    );
  });

  it('are the whole plate when the ring goes round it', () => {
    const around = areaRow(
      mesh,
      find,
      [
        [-1, -1],
        [11, -1],
        [11, 11],
        [-1, 11],
      ],
      '',
    );
    const everywhere = everywhereRow(mesh);
    expect([...around.dof]).toEqual([...everywhere.dof]);
    expect(Math.max(...around.value.map((v, k) => Math.abs(v - everywhere.value[k])))).toBeLessThan(1e-13);
    expect(spanOf(everywhere)).toBeCloseTo(100, 11);
  });
});

describe('rows at points and over bearing discs', () => {
  it('take w at the point, also on a side and at a node', () => {
    const points: Point[] = [
      [3.21, 7.77],
      [mesh.x[40], mesh.y[40]],
      [5, 0],
      [10, 10],
      [0, 3.3],
    ];
    for (const [x, y] of points)
      expect(
        worst(
          pointRow(mesh, find, [x, y], ''),
          mesh,
          powers.map(([p, q]) => x ** p * y ** q),
        ),
      ).toBeLessThan(1e-12);
  });

  it('average w over the disc: second moments of a circle', () => {
    // Mean of x^2 over a disc is x0^2 + d^2/16.
    const [x, y, d] = [4.2, 5.9, 3];
    const row = discRow(mesh, find, [x, y], d, '');
    expect(spanOf(row)).toBeCloseTo(1, 13);
    expect(worst(row, mesh, [1, x, y, x * x + (d * d) / 16, x * y, y * y + (d * d) / 16])).toBeLessThan(1e-3);
  });

  it('tend to the point as the disc shrinks, and average over what is on the plate at a rim', () => {
    const u = quadratic(mesh, [0.3, 1, -2, 0.4, -0.1, 0.7]);
    const point = dotRow(pointRow(mesh, find, [6.1, 2.3], ''), u);
    expect(dotRow(discRow(mesh, find, [6.1, 2.3], 0, ''), u)).toBe(point);
    expect(dotRow(discRow(mesh, find, [6.1, 2.3], 1e-4, ''), u)).toBeCloseTo(point, 8);
    expect(spanOf(discRow(mesh, find, [0, 5], 2, ''))).toBeCloseTo(1, 13);
  });
});

describe('rows along lines', () => {
  const along = (from: Point, to: Point) => {
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
    return powers.map(([p, q]) =>
      [
        [-1 / Math.sqrt(3), 0.5],
        [1 / Math.sqrt(3), 0.5],
      ].reduce((sum, [s, weight]) => {
        const [x, y] = [0, 1].map((d) => from[d] + ((1 + s) / 2) * (to[d] - from[d]));
        return sum + weight * length * x ** p * y ** q;
      }, 0),
    );
  };

  it.each<[string, Point, Point]>([
    ['across elements', [0.7, 1.2], [8.8, 7.9]],
    ['inside one element', [3.31, 3.3], [3.36, 3.31]],
    ['along the boundary', [2, 0], [7, 0]],
    ['through nodes', [0, 0], [10, 10]],
  ])('integrate every quadratic exactly, %s', (_, from, to) => {
    expect(worst(lineRow(mesh, find, from, to, ''), mesh, along(from, to))).toBeLessThan(1e-10);
  });

  it('count a line along element sides once', () => {
    const even = irregularMesh(4, 0);
    expect(spanOf(lineRow(even, locator(even), [0, 5], [10, 5], ''))).toBeCloseTo(10, 12);
  });

  it('follow slanted sides and boundaries piece by piece, whichever side of them rounding puts the line on', () => {
    const even = irregularMesh(5, 0);
    const u = Float64Array.from({ length: 3 * even.x.length }, (_, i) => Math.sin(i * i));
    for (let angle = 0.07; angle < 6; angle += 0.31) {
      const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
      const turn = (x: number, y: number): Point => [cos * x - sin * y, sin * x + cos * y];
      const slanted: Mesh = {
        ...even,
        x: even.x.map((x, i) => turn(x, even.y[i])[0]),
        y: even.y.map((y, i) => turn(even.x[i], y)[1]),
      };
      const seek = locator(slanted);
      for (const y of [-1e-9, 0, 4, 10, 10 + 1e-9]) {
        const row = lineRow(slanted, seek, turn(1, y), turn(9, y), '');
        // Simpson's rule between the nodes, 2 mm apart.
        let exact = 0;
        for (const [x, length] of [
          [1.5, 1],
          [3, 2],
          [5, 2],
          [7, 2],
          [8.5, 1],
        ])
          for (const [s, weight] of [
            [-0.5, 1 / 6],
            [0, 4 / 6],
            [0.5, 1 / 6],
          ])
            exact += weight * length * dotRow(pointRow(slanted, seek, turn(x + s * length, y), ''), u);
        expect(Math.abs(dotRow(row, u) - exact)).toBeLessThan(1e-7);
      }
    }
  });

  it('take only what is on the plate', () => {
    expect(spanOf(lineRow(mesh, find, [-3, 5], [4, 5], ''))).toBeCloseTo(4, 12);
  });
});

describe('rows off the plate', () => {
  it('name the path and the place', () => {
    const disc = discMesh(4);
    const seek = locator(disc);
    const refused = (make: () => SparseRow, path: string) =>
      expect(make).toThrowError(
        expect.objectContaining({ code: 'OUTSIDE', path, message: expect.stringContaining('0.9, 0.9') }),
      );
    refused(() => pointRow(disc, seek, [0.9, 0.9], 'supports.3.at'), 'supports.3.at');
    refused(() => discRow(disc, seek, [0.9, 0.9], 3, 'supports.0.at'), 'supports.0.at');
    refused(
      () =>
        areaRow(
          disc,
          seek,
          [
            [0.9, 0.9],
            [1, 0.9],
            [1, 1],
          ],
          'loads.0.over',
        ),
      'loads.0.over',
    );
    // A line that only touches a corner of the plate has no length on it.
    expect(() => lineRow(mesh, find, [9, 11], [11, 9], '')).toThrowError(expect.objectContaining({ code: 'OUTSIDE' }));
    refused(() => lineRow(disc, seek, [0.9, 0.9], [2, 2], 'loads.1.along'), 'loads.1.along');
  });

  it('refuse coordinates that are no numbers', () => {
    expect(() => pointRow(mesh, find, [Number.NaN, 1], 'report.at.0')).toThrowError(
      expect.objectContaining({ code: 'OUTSIDE' }),
    );
  });
});
