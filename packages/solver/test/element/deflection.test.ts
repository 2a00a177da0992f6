import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  addPointWeights,
  addPolygonWeights,
  addSegmentWeights,
  deflectionRow,
  deflectionShape,
  wholeWeights,
} from '../../src/element/deflection.ts';
import { radon7 } from './quadrature.ts';
import { norm, sampleTriangles } from './sample-triangles.ts';

const shape = (x: Float64Array, y: Float64Array, [l0, l1, l2]: readonly number[]): Float64Array => {
  const N = new Float64Array(9);
  deflectionShape(x, y, l0, l1, l2, N);
  return N;
};
const row = (x: Float64Array, y: Float64Array, weights: Float64Array): Float64Array => {
  const N = new Float64Array(9);
  deflectionRow(x, y, weights, N);
  return N;
};
const addScaled = (sum: Float64Array, factor: number, terms: Float64Array): void => {
  for (let p = 0; p < sum.length; p++) sum[p] += factor * terms[p];
};
const dot = (a: Float64Array, b: Float64Array): number => a.reduce((sum, v, i) => sum + v * b[i], 0);
const inside = [...radon7.map(({ l }) => l), [1, 0, 0], [0, 1, 0], [0, 0, 1], [0.3, 0.7, 0], [0, 0.2, 0.8]];
/** Nodal dofs of a field with slopes, thin plate: thetaX = w,y and thetaY = -w,x. */
const dofs = (x: Float64Array, y: Float64Array, w: (x: number, y: number) => readonly [number, number, number]) =>
  Float64Array.from({ length: 9 }, (_, p) => {
    const [value, slopeX, slopeY] = w(x[Math.floor(p / 3)], y[Math.floor(p / 3)]);
    return [value, slopeY, -slopeX][p % 3];
  });

describe.each(sampleTriangles)('deflection inside a triangle, $name', ({ x, y }) => {
  const at = ([l0, l1, l2]: readonly number[]) => [
    l0 * x[0] + l1 * x[1] + l2 * x[2],
    l0 * y[0] + l1 * y[1] + l2 * y[2],
  ];

  it('adds up to one and moves rigidly with its nodes', () => {
    const motion = dofs(x, y, (px, py) => [2 - 0.3 * px + 0.7 * py, -0.3, 0.7]);
    for (const l of inside) {
      const N = shape(x, y, l);
      expect(N[0] + N[3] + N[6]).toBeCloseTo(1, 14);
      const [px, py] = at(l);
      const w = 2 - 0.3 * px + 0.7 * py;
      expect(Math.abs(dot(N, motion) - w)).toBeLessThan(1e-13 * Math.max(1, norm(motion)));
    }
  });

  it('holds every quadratic deflection', () => {
    const [ox, oy] = [x[0], y[0]];
    const field = (px: number, py: number): [number, number, number] => {
      const [dx, dy] = [px - ox, py - oy];
      return [
        1 + dx - dy + 0.6 * dx * dx - 1.3 * dx * dy + 0.4 * dy * dy,
        1 + 1.2 * dx - 1.3 * dy,
        -1 - 1.3 * dx + 0.8 * dy,
      ];
    };
    const u = dofs(x, y, field);
    for (const l of inside) {
      const [px, py] = at(l);
      expect(Math.abs(dot(shape(x, y, l), u) - field(px, py)[0])).toBeLessThan(1e-13 * norm(u));
    }
  });

  it('holds constant shear: a tilt without rotation', () => {
    const u = Float64Array.from({ length: 9 }, (_, p) => (p % 3 === 0 ? 0.4 * x[p / 3] - 0.2 * y[p / 3] : 0));
    for (const l of inside) {
      const [px, py] = at(l);
      expect(Math.abs(dot(shape(x, y, l), u) - (0.4 * px - 0.2 * py))).toBeLessThan(1e-13 * Math.max(1, norm(u)));
    }
  });

  it('depends on a side by its own two nodes only, so that neighbours agree along it', () => {
    for (const l of [0.1, 0.5, 0.8]) {
      const N = shape(x, y, [l, 1 - l, 0]);
      expect(norm(N.subarray(6))).toBe(0);
      // The side seen from the other triangle, with the third node elsewhere.
      const other = shape(Float64Array.of(x[1], x[0], 2 * x[0] - x[2]), Float64Array.of(y[1], y[0], 2 * y[0] - y[2]), [
        1 - l,
        l,
        0,
      ]);
      for (let a = 0; a < 3; a++) {
        expect(other[3 + a]).toBeCloseTo(N[a], 14);
        expect(other[a]).toBeCloseTo(N[3 + a], 14);
      }
    }
  });

  it('integrates exactly over the whole, over polygons and along segments', () => {
    const area = ((x[1] - x[0]) * (y[2] - y[0]) - (x[2] - x[0]) * (y[1] - y[0])) / 2;
    const whole = new Float64Array(6);
    wholeWeights(area, whole);
    const expected = new Float64Array(9);
    for (const { l, weight } of radon7) addScaled(expected, weight * area, shape(x, y, l));
    const N = row(x, y, whole);
    expect(norm(N.map((v, p) => v - expected[p]))).toBeLessThan(1e-13 * norm(expected));

    // A dart, concave at its third corner: the triangle of its outer corners less the one it lacks.
    const corners = [
      [0.8, 0.1, 0.1],
      [0.1, 0.8, 0.1],
      [0.3, 0.35, 0.35],
      [0.1, 0.1, 0.8],
    ].flatMap(at);
    const dart = new Float64Array(6);
    addPolygonWeights(x, y, Float64Array.from(corners), 4, dart);
    const [p0, p1, p2, p3] = [0, 2, 4, 6].map((c) => corners.slice(c, c + 2));
    const parts = [
      [p0, p1, p2],
      [p0, p2, p3],
    ];
    const sum = new Float64Array(9);
    for (const [a, b, c] of parts) {
      const part = ((b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1])) / 2;
      for (const { l, weight } of radon7) {
        const point = new Float64Array(6);
        const [px, py] = [0, 1].map((d) => l[0] * a[d] + l[1] * b[d] + l[2] * c[d]);
        addPointWeights(x, y, px, py, weight * part, point);
        addScaled(sum, 1, row(x, y, point));
      }
    }
    expect(norm(row(x, y, dart).map((v, p) => v - sum[p]))).toBeLessThan(1e-10 * norm(sum));

    const [a, b] = [at([0.7, 0.2, 0.1]), at([0.1, 0.3, 0.6])];
    const segment = new Float64Array(6);
    addSegmentWeights(x, y, a[0], a[1], b[0], b[1], segment);
    // Simpson's rule is exact to degree 3.
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const simpson = new Float64Array(6);
    for (const [s, weight] of [
      [0, 1 / 6],
      [0.5, 4 / 6],
      [1, 1 / 6],
    ])
      addPointWeights(x, y, a[0] + s * (b[0] - a[0]), a[1] + s * (b[1] - a[1]), weight * length, simpson);
    expect(norm(segment.map((v, p) => v - simpson[p]))).toBeLessThan(1e-11 * norm(simpson));
  });
});

it('integrates a polygon to the same whatever the corner that it starts from', () => {
  const { x, y } = sampleTriangles[1];
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 4 }),
      fc.array(fc.double({ min: 0.1, max: 1, noNaN: true }), { minLength: 5, maxLength: 5 }),
      (turn, radii) => {
        const corners = radii.map((r, c) => [
          1 + 0.4 * r * Math.cos(1.2566 * c),
          0.57 + 0.4 * r * Math.sin(1.2566 * c),
        ]);
        const weights = [corners, [...corners.slice(turn), ...corners.slice(0, turn)]].map((list) => {
          const out = new Float64Array(6);
          addPolygonWeights(x, y, Float64Array.from(list.flat()), 5, out);
          return out;
        });
        expect(norm(weights[0].map((v, p) => v - weights[1][p]))).toBeLessThan(1e-14);
      },
    ),
    { seed: 7 },
  );
});
