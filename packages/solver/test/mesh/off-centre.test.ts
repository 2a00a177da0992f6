import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { measure, placeOffCentre, type TriangleShape } from '../../src/mesh/off-centre.ts';
import { smallestAngle } from '../../src/mesh/quality.ts';
import { nextEdge } from '../../src/mesh/triangulation.ts';
import { oneTriangle } from './one-triangle.ts';

/** Two angles of a triangle, its smallest side, how it is turned and which corner comes first. */
const anyTriangle = fc
  .record({
    alpha: fc.double({ min: 0.05, max: 1.5, noNaN: true }),
    beta: fc.double({ min: 0.05, max: 1.5, noNaN: true }),
    side: fc.double({ min: 0.1, max: 10, noNaN: true }),
    turn: fc.double({ min: 0, max: 6.28, noNaN: true }),
    first: fc.integer({ min: 0, max: 2 }),
  })
  .map(({ alpha, beta, side, turn, first }) => {
    const gamma = Math.PI - alpha - beta;
    const rightOf = (l: number, angle: number): [number, number] => [
      l * Math.cos(turn + angle),
      l * Math.sin(turn + angle),
    ];
    // Law of sines: the side opposite to beta from the corner with alpha.
    const corners: [number, number][] = [
      [0, 0],
      rightOf(side, 0),
      rightOf((side * Math.sin(beta)) / Math.sin(gamma), alpha),
    ];
    const order = [first, (first + 1) % 3, (first + 2) % 3];
    return {
      mesh: oneTriangle(order.map((k) => corners[k])),
      angles: [alpha, beta, gamma],
      radius: side / (2 * Math.sin(gamma)),
    };
  });

const measured = (mesh: ReturnType<typeof oneTriangle>): TriangleShape => {
  const shape = { shortest2: 0, longest2: 0, radius2: 0, shortestEdge: -1, x: Number.NaN, y: Number.NaN };
  measure(shape, mesh, 0);
  return shape;
};

const distance = ({ x, y }: ReturnType<typeof oneTriangle>, corner: number, px: number, py: number) =>
  Math.hypot(px - x[corner], py - y[corner]);

describe('the measures of a triangle', () => {
  it('are those of the law of sines', () => {
    fc.assert(
      fc.property(anyTriangle, ({ mesh, angles, radius }) => {
        const shape = measured(mesh);
        expect(Math.sqrt(shape.radius2) / radius).toBeCloseTo(1, 9);
        expect(Math.sqrt(shape.shortest2) / (2 * radius * Math.sin(Math.min(...angles)))).toBeCloseTo(1, 9);
        const longest = Math.max(...angles.map((angle) => 2 * radius * Math.sin(angle)));
        expect(Math.sqrt(shape.longest2) / longest).toBeCloseTo(1, 9);
        const [a, b] = [shape.shortestEdge, nextEdge(shape.shortestEdge)];
        expect(distance(mesh, a, mesh.x[b], mesh.y[b]) ** 2 / shape.shortest2).toBeCloseTo(1, 12);
        const least = (Math.min(...angles) * 180) / Math.PI;
        expect(smallestAngle(mesh.x, mesh.y, mesh.origin, 1)).toBeCloseTo(least, 6);
      }),
      { seed: 21 },
    );
  });

  it('take the smallest angle of all triangles that count', () => {
    // Legs 3 and 4; an equilateral one; legs 1 and 1.
    const x = Float64Array.of(0, 4, 0, 10, 12, 11, 20, 21, 20);
    const y = Float64Array.of(0, 0, 3, 0, 0, Math.sqrt(3), 0, 0, 1);
    const all = [3, 4, 5, 6, 7, 8, 0, 1, 2];
    const angles = [60, 45, (Math.atan(3 / 4) * 180) / Math.PI];
    for (const count of [1, 2, 3]) expect(smallestAngle(x, y, all, count)).toBeCloseTo(angles[count - 1], 10);
  });
});

describe('the off-centre', () => {
  it('is the circumcentre where nothing keeps it nearer', () => {
    fc.assert(
      fc.property(anyTriangle, ({ mesh, radius }) => {
        const shape = measured(mesh);
        placeOffCentre(shape, mesh, Infinity, Infinity);
        for (const corner of [0, 1, 2]) expect(distance(mesh, corner, shape.x, shape.y) / radius).toBeCloseTo(1, 7);
      }),
      { seed: 22 },
    );
  });

  it('is as far as wanted from both ends of the shortest edge, or makes an angle with it as small as allowed', () => {
    fc.assert(
      fc.property(anyTriangle, fc.double({ min: 0.3, max: 3, noNaN: true }), ({ mesh, radius }, share) => {
        const shape = measured(mesh);
        const [a, b] = [shape.shortestEdge, nextEdge(shape.shortestEdge)];
        const length = Math.sqrt(shape.shortest2);
        const cotangent = 1.9;
        placeOffCentre(shape, mesh, share * length, cotangent / 2);
        const [fromA, fromB] = [distance(mesh, a, shape.x, shape.y), distance(mesh, b, shape.x, shape.y)];
        expect(fromA / fromB).toBeCloseTo(1, 9);
        // On the side of the apex, and no new edge longer than wanted, or than the thinnest triangle's or the radius.
        const thinnest = length * Math.hypot(cotangent / 2, 0.5);
        const wanted = Math.max(share, 1) * length;
        const left = (mesh.x[b] - mesh.x[a]) * (shape.y - mesh.y[a]) - (mesh.y[b] - mesh.y[a]) * (shape.x - mesh.x[a]);
        expect(left).toBeGreaterThan(0);
        expect(fromA / Math.min(wanted, thinnest, radius)).toBeCloseTo(1, 7);
      }),
      { seed: 23 },
    );
  });
});
