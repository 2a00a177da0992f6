/// <reference path="../../src/supports/quadprog.d.ts" />
import fc from 'fast-check';
import { CholeskyDecomposition, Matrix } from 'ml-matrix';
import { solveQP } from 'quadprog';
import { describe, expect, it } from 'vitest';
import type { BlockMatrix } from '../../src/linear-algebra/block-matrix.ts';
import { factorise } from '../../src/linear-algebra/factor.ts';
import { graphOf } from '../../src/linear-algebra/graph.ts';
import { order } from '../../src/linear-algebra/order.ts';
import { scaledResidual } from '../../src/linear-algebra/residual.ts';
import { solve } from '../../src/linear-algebra/solve.ts';
import { analyse } from '../../src/linear-algebra/symbolic.ts';
import { arrow, chain, type Drawing, dense, grid, randomDrawing, randomSystem, uniform } from './systems.ts';

function factorOf(K: BlockMatrix, { x, y }: Drawing) {
  return factorise(analyse(K, order(graphOf(K), x, y)), K);
}

function againstDense(drawing: Drawing, seed: number): number {
  const K = randomSystem(drawing.n, drawing.edges, seed);
  const next = uniform(seed + 1);
  const f = Float64Array.from({ length: 3 * K.n }, () => 2 * next() - 1);
  const u = solve(factorOf(K, drawing), f);
  const expected = new CholeskyDecomposition(new Matrix(dense(K))).solve(Matrix.columnVector(f)).to1DArray();
  const scale = Math.max(...expected.map(Math.abs));
  return Math.max(...expected.map((value, i) => Math.abs(value - u[i]))) / scale;
}

describe('solve', () => {
  it.each([
    ['one block', chain(1)],
    ['two blocks', chain(2)],
    ['a chain', chain(90)],
    ['an arrow', arrow(80)],
    ['a grid', grid(12, 11)],
    ['a long grid', grid(60, 4)],
    ['separate parts', { ...randomDrawing(90, 30, 7) }],
    ['no edges at all', randomDrawing(70, 0, 7)],
    ['a dense graph', randomDrawing(70, 4000, 3)],
    ['vertices all in one place', { ...grid(10, 10), x: new Float64Array(100), y: new Float64Array(100) }],
  ])('agrees with dense Cholesky on %s', (_, drawing) => {
    expect(againstDense(drawing, 5)).toBeLessThan(1e-10);
  });

  it('agrees with dense Cholesky on random graphs', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 110 }),
        fc.integer({ min: 0, max: 300 }),
        fc.integer({ min: 0, max: 1e6 }),
        (n, edges, seed) => againstDense(randomDrawing(n, edges, seed), seed) < 1e-10,
      ),
      { numRuns: 60, seed: 20261125 },
    );
  });

  it.each([
    ['a chain', chain(30), 3],
    ['a grid', grid(6, 7), 4],
    ['a random graph', randomDrawing(40, 90, 7), 5],
  ] as const)('agrees with a library of quadratic programs on %s: min u K u/2 - f u', (_, drawing, seed) => {
    const K = randomSystem(drawing.n, drawing.edges, seed);
    const f = Float64Array.from({ length: 3 * K.n }, (_, i) => Math.sin(3 * i + seed));
    const u = solve(factorOf(K, drawing), f);
    const fromOne = <T>(values: readonly T[]): T[] => [undefined as T, ...values];
    // One constraint, that is never met: u_0 >= -1e9.
    const first = fromOne(Array.from(f, (_, i) => fromOne([i === 0 ? 1 : 0])));
    const D = fromOne(dense(K).map((row) => fromOne(Array.from(row))));
    const { solution } = solveQP(D, fromOne(Array.from(f)), first, fromOne([-1e9]), 0);
    const scale = Math.max(...u.map(Math.abs));
    u.forEach((value, i) => {
      expect(Math.abs(solution[i + 1] - value) / scale).toBeLessThan(1e-10);
    });
  });

  it('leaves a scaled residual at rounding level', () => {
    const drawing = grid(40, 40);
    const K = randomSystem(drawing.n, drawing.edges, 2, 1e-3);
    const f = Float64Array.from({ length: 3 * K.n }, (_, i) => Math.sin(i));
    const u = solve(factorOf(K, drawing), f);
    expect(scaledResidual(K, u, f)).toBeLessThan(1e-14);
    u[17] *= 1 + 1e-9;
    expect(scaledResidual(K, u, f)).toBeGreaterThan(1e-14);
  });
});
