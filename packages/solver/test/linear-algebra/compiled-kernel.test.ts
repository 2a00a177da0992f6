import { describe, expect, it } from 'vitest';
import './relaxed-simd.ts';
import { availableKernels } from '../../src/linear-algebra/compiled-kernel.ts';
import { factorise } from '../../src/linear-algebra/factor.ts';
import { graphOf } from '../../src/linear-algebra/graph.ts';
import { order } from '../../src/linear-algebra/order.ts';
import { plainKernel } from '../../src/linear-algebra/plain-kernel.ts';
import { scaledResidual } from '../../src/linear-algebra/residual.ts';
import { solve } from '../../src/linear-algebra/solve.ts';
import { analyse } from '../../src/linear-algebra/symbolic.ts';
import { randomSystem, uniform } from './systems.ts';

const kernels = availableKernels();

/** Points in a square, joined to those nearby: fronts of every size and parity. */
function scattered(n: number, seed: number) {
  const next = uniform(seed);
  const x = Float64Array.from({ length: n }, next);
  const y = Float64Array.from({ length: n }, next);
  const reach = 2.2 / Math.sqrt(n);
  const edges: [number, number][] = [];
  for (let i = 0; i < n; i++)
    for (let j = 0; j < i; j++) if (Math.hypot(x[i] - x[j], y[i] - y[j]) < reach) edges.push([i, j]);
  return { x, y, matrix: randomSystem(n, edges, seed) };
}

describe('front kernels', () => {
  it('are all there wherever tests run, fastest first', () => {
    expect(kernels.map((kernel) => kernel.name)).toEqual(['fused', 'simd', 'plain']);
  });

  for (const [n, seed] of [
    [1, 1],
    [2, 2],
    [7, 3],
    [60, 4],
    [301, 5],
    [900, 6],
  ])
    it(`solve the same system of ${n} blocks to 1e-10 of each other (seed ${seed})`, () => {
      const { x, y, matrix } = scattered(n, seed);
      const symbolic = analyse(matrix, order(graphOf(matrix), x, y));
      const f = Float64Array.from({ length: 3 * n }, uniform(seed + 100));
      const plain = solve(factorise(symbolic, matrix, { kernel: plainKernel }), f);
      for (const kernel of kernels) {
        const u = solve(factorise(symbolic, matrix, { kernel }), f);
        expect(scaledResidual(matrix, u, f)).toBeLessThan(1e-14);
        u.forEach((value, i) => {
          expect(Math.abs(value - plain[i])).toBeLessThan(1e-10 * (1 + Math.abs(plain[i])));
        });
      }
    });

  it('name the same node of a matrix that is not definite', () => {
    const { x, y, matrix } = scattered(50, 7);
    const value = matrix.value.slice();
    value[9 * (matrix.start[31] - 1) + 4] *= -1;
    const symbolic = analyse(matrix, order(graphOf(matrix), x, y));
    for (const kernel of kernels)
      expect(() => factorise(symbolic, { ...matrix, value }, { kernel })).toThrow(/node 30, dof 1/);
  });
});
