import { describe, expect, it } from 'vitest';
import { gradedSizes } from '../../src/results/graded-sizes.ts';

/** Equilateral triangles of side a, each on nodes of its own, off the origin. */
function apart(...sides: number[]) {
  const height = Math.sqrt(3) / 2;
  return {
    x: Float64Array.from(sides.flatMap((a, i) => [10 * i + 3, 10 * i + 3 + a, 10 * i + 3 + a / 2])),
    y: Float64Array.from(sides.flatMap((a) => [2, 2, 2 + height * a])),
    triangles: Uint32Array.from({ length: 3 * sides.length }, (_, i) => i),
    region: new Uint32Array(sides.length),
    boundary: new Uint32Array(0),
    minAngle: 60,
  };
}
const area = (a: number) => (Math.sqrt(3) / 4) * a ** 2;
const sizesOf = (sides: number[], eta: number[], ratio: number): number[] => {
  const nodal = gradedSizes(apart(...sides), Float64Array.from(eta), ratio);
  // The same at the three corners of a triangle.
  return sides.map((_, t) => {
    expect(nodal[3 * t + 1]).toBe(nodal[3 * t]);
    expect(nodal[3 * t + 2]).toBe(nodal[3 * t]);
    return nodal[3 * t];
  });
};

describe('element sizes for an error', () => {
  it('of a quarter of what all elements add alike are half as large', () => {
    const [one, two] = sizesOf([1, 1], [0.3, 0.3], 0.25);
    expect(one).toBeCloseTo(0.5, 12);
    expect(two).toBeCloseTo(0.5, 12);
  });

  it('add up to what is asked for, with as few elements as any sizes near them', () => {
    const [sides, eta, ratio] = [[1, 1, 2], [1, 6, 3], 0.5];
    const c = eta.map((value, t) => value / (area(sides[t]) * sides[t] ** 2));
    const error = (h: number[]) => h.reduce((sum, size, t) => sum + c[t] * area(sides[t]) * size ** 2, 0);
    const count = (h: number[]) => h.reduce((sum, size, t) => sum + area(sides[t]) / size ** 2, 0);
    const best = sizesOf(sides, eta, ratio);
    expect(error(best)).toBeCloseTo(ratio * 10, 9);
    for (const t of [0, 1, 2])
      for (const by of [0.9, 1.1]) {
        const other = best.map((size, i) => (i === t ? by * size : size));
        // Brought back to the same error.
        const back = Math.sqrt(error(best) / error(other));
        expect(count(other.map((size) => back * size))).toBeGreaterThan(count(best));
      }
  });

  it('change by a sixth or a double at most in one round', () => {
    const [small, large, none] = sizesOf([1, 1, 1], [1e6, 1e-6, 0], 1e-3);
    expect(small).toBeCloseTo(1 / 6, 12);
    expect(large).toBeCloseTo(2, 12);
    expect(none).toBeCloseTo(2, 12);
  });

  it('at a node are the least around it', () => {
    const shared = { ...apart(1, 1), triangles: Uint32Array.of(0, 1, 2, 3, 4, 2) };
    const [alone] = gradedSizes(shared, Float64Array.of(100, 1), 0.9);
    const sizes = gradedSizes(shared, Float64Array.of(100, 1), 0.9);
    expect(sizes[2]).toBe(Math.min(alone, sizes[3]));
    expect(sizes[3]).not.toBe(alone);
  });
});
