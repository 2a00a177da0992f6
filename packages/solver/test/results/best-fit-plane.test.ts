import { describe, expect, it } from 'vitest';
import { bestFitPlane } from '../../src/results/best-fit-plane.ts';
import { randomPoints, surface, uniform } from './point-sets.ts';

const squares = (points: Float64Array, weights: Float64Array, a: number, bx: number, by: number): number =>
  weights.reduce(
    (sum, weight, i) => sum + weight * (points[3 * i + 2] - a - bx * points[3 * i] - by * points[3 * i + 1]) ** 2,
    0,
  );

describe('bestFitPlane', () => {
  it('gives back a plane of micrometres over tens of millimetres, far from the origin', () => {
    const points = surface(1, 60, (x, y) => 0.004 + 1e-6 * x - 3e-7 * y).map((v, k) => (k % 3 === 2 ? v : v + 500));
    const { a, bx, by } = bestFitPlane(points);
    expect(bx).toBeCloseTo(1e-6, 16);
    expect(by).toBeCloseTo(-3e-7, 16);
    expect(a).toBeCloseTo(0.004 - 500 * (1e-6 - 3e-7), 14);
  });

  it.each(Array.from({ length: 20 }, (_, seed) => seed))('is the least of the weighted squares, seed %i', (seed) => {
    const points = randomPoints(seed, 12, [60, 30, 0.04]);
    const random = uniform(seed + 1000);
    const weights = Float64Array.from({ length: 12 }, random);
    const { a, bx, by } = bestFitPlane(points, weights);
    const least = squares(points, weights, a, bx, by);
    for (const [da, dx, dy] of [
      [1, 0, 0],
      [0, 0.03, 0],
      [0, 0, 0.03],
      [-1, 0.03, -0.03],
    ])
      for (const step of [1e-4, -1e-4])
        expect(squares(points, weights, a + step * da, bx + step * dx, by + step * dy)).toBeGreaterThan(least);
  });

  it('counts a point of weight 2 twice and one of weight 0 not at all', () => {
    const once = Float64Array.of(0, 0, 0, 10, 0, 1, 0, 10, 2, 10, 10, 5, 4, 4, 100);
    const twice = Float64Array.of(...once.subarray(0, 12), 10, 10, 5);
    const [weighted, repeated] = [bestFitPlane(once, Float64Array.of(1, 1, 1, 2, 0)), bestFitPlane(twice)];
    for (const key of ['a', 'bx', 'by'] as const) expect(weighted[key]).toBeCloseTo(repeated[key], 14);
  });

  it('leaves a line of points its slope and tilts no more than that', () => {
    // z = s t over x = 3 t, y = 4 t: the smallest tilt that fits is s/5 along (3, 4)/5.
    const points = Float64Array.from([-2, -1, 0, 1, 3].flatMap((t) => [1 + 3 * t, 2 + 4 * t, 0.5 * t]));
    const { a, bx, by } = bestFitPlane(points);
    expect(bx).toBeCloseTo((0.5 / 5) * (3 / 5), 14);
    expect(by).toBeCloseTo((0.5 / 5) * (4 / 5), 14);
    expect(a + bx + 2 * by).toBeCloseTo(0, 14);
  });

  it.each([
    ['no point', [], [0, 0, 0]],
    ['one point', [3, 4, 5], [5, 0, 0]],
    ['the same point twice', [3, 4, 5, 3, 4, 6], [5.5, 0, 0]],
    ['two points', [0, 0, 1, 2, 0, 3], [1, 1, 0]],
  ])('is level where nothing tells the tilt: %s', (_, points, [a, bx, by]) => {
    const plane = bestFitPlane(Float64Array.from(points));
    expect(plane.a).toBeCloseTo(a, 15);
    expect(plane.bx).toBeCloseTo(bx, 15);
    expect(plane.by).toBeCloseTo(by, 15);
  });

  it('is z = 0 when nothing has weight', () => {
    expect(bestFitPlane(Float64Array.of(0, 0, 1, 2, 0, 3), new Float64Array(2))).toEqual({ a: 0, bx: 0, by: 0 });
  });
});
