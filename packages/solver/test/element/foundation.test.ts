import { describe, expect, it } from 'vitest';
import { deflectionShape } from '../../src/element/deflection.ts';
import { addFoundationStiffness } from '../../src/element/foundation.ts';
import { radon7 } from './quadrature.ts';
import { norm, sampleTriangles } from './sample-triangles.ts';

const modulus = 3.7;

describe.each(sampleTriangles)('foundation under a triangle, $name', ({ x, y }) => {
  const corner = (n: number): [number, number] => [x[n], y[n]];
  const under = (...polygon: [number, number][]): Float64Array => {
    const Ke = new Float64Array(81);
    addFoundationStiffness(x, y, modulus, Float64Array.from(polygon.flat()), polygon.length, Ke);
    return Ke;
  };
  const area = ((x[1] - x[0]) * (y[2] - y[0]) - (x[2] - x[0]) * (y[1] - y[0])) / 2;
  const whole = under(corner(0), corner(1), corner(2));

  it('is k integral of N N, by another rule', () => {
    const N = new Float64Array(9);
    const expected = new Float64Array(81);
    for (const { l, weight } of radon7) {
      deflectionShape(x, y, l[0], l[1], l[2], N);
      for (let p = 0; p < 9; p++)
        for (let q = 0; q < 9; q++) expected[9 * p + q] += modulus * weight * area * N[p] * N[q];
    }
    expect(norm(whole.map((v, i) => v - expected[i]))).toBeLessThan(1e-13 * norm(expected));
  });

  it('carries a unit deflection with k times the area', () => {
    let force = 0;
    for (const p of [0, 3, 6]) for (const q of [0, 3, 6]) force += whole[9 * p + q];
    expect(force / (modulus * area)).toBeCloseTo(1, 13);
  });

  it('is the sum of its parts', () => {
    const middle: [number, number] = [0.2 * x[0] + 0.5 * x[1] + 0.3 * x[2], 0.2 * y[0] + 0.5 * y[1] + 0.3 * y[2]];
    const parts = [under(corner(0), corner(1), middle), under(corner(1), corner(2), corner(0), middle)];
    expect(norm(whole.map((v, i) => v - parts[0][i] - parts[1][i]))).toBeLessThan(1e-12 * norm(whole));
  });
});
