import { describe, expect, it } from 'vitest';
import { areaMass } from '../../src/assembly/area-mass.ts';
import { pointsRow } from '../../src/assembly/rows.ts';
import type { Ring } from '../../src/geometry/point.ts';
import { dotRow } from '../../src/linear-algebra/sparse-row.ts';
import { locator } from '../../src/mesh/locate.ts';
import { irregularMesh } from './sample-meshes.ts';

const mesh = irregularMesh(6);
const find = locator(mesh);

/** Dofs of w = x^p y^q for p + q up to 2, which the interpolation holds exactly. */
const field = (p: number, q: number): Float64Array => {
  const power = (base: number, k: number) => (k < 0 ? 0 : base ** k);
  return Float64Array.from({ length: 3 * mesh.x.length }, (_, i) => {
    const [x, y] = [mesh.x[Math.floor(i / 3)], mesh.y[Math.floor(i / 3)]];
    if (i % 3 === 0) return x ** p * y ** q;
    return i % 3 === 1 ? q * x ** p * power(y, q - 1) : -p * power(x, p - 1) * y ** q;
  });
};
const powers = [[0, 0], [1, 0], [0, 1], [2, 0], [1, 1], [0, 2]]; // biome-ignore format: exponents
const inner = (a: Float64Array, b: Float64Array) => a.reduce((sum, value, i) => sum + value * b[i], 0);

describe('integrals over an area', () => {
  const box: Ring = [[1.3, 2.1], [7.7, 2.1], [7.7, 9.4], [1.3, 9.4]]; // biome-ignore format: corners
  for (const [name, over, [x0, x1, y0, y1]] of [
    ['all of the plate', 'all', [0, 10, 0, 10]],
    ['a part that cuts elements', box, [1.3, 7.7, 2.1, 9.4]],
  ] as const)
    it(`are those of the powers of x and y in closed form: ${name}`, () => {
      const integral = (p: number, q: number) =>
        (((x1 ** (p + 1) - x0 ** (p + 1)) / (p + 1)) * (y1 ** (q + 1) - y0 ** (q + 1))) / (q + 1);
      const mass = areaMass(mesh, find, over, '');
      expect(mass.area / integral(0, 0)).toBeCloseTo(1, 12);
      for (const [p, q] of powers) {
        const u = field(p, q);
        expect(mass.mean(u) / integral(p, q)).toBeCloseTo(1, 11);
        for (const [r, s] of powers)
          expect(inner(field(r, s), mass.times(u)) / integral(p + r, q + s)).toBeCloseTo(1, 11);
      }
    });
});

describe('averages over points', () => {
  const at = [[2.2, 3.1], [7.9, 0], [5, 5]] as const; // biome-ignore format: points

  it('count each point by its share, alike where none is given', () => {
    for (const shares of [undefined, [1, 2, 5]]) {
      const row = pointsRow(mesh, find, at.map(([x, y], i) => [x, y, shares?.[i]] as const), ''); // biome-ignore format: one line
      for (const [p, q] of powers) {
        const whole = shares === undefined ? 3 : 8;
        const mean = at.reduce((sum, [x, y], i) => sum + ((shares?.[i] ?? 1) / whole) * x ** p * y ** q, 0);
        expect(dotRow(row, field(p, q))).toBeCloseTo(mean, 11);
      }
    }
  });

  it('refuse a point off the plate by its place in the list', () => {
    expect(() =>
      pointsRow(
        mesh,
        find,
        [
          [5, 5],
          [5, 12],
        ],
        'report.points',
      ),
    ).toThrowError(
      // biome-ignore format: points
      expect.objectContaining({ code: 'OUTSIDE', path: 'report.points.1' }),
    );
  });
});
