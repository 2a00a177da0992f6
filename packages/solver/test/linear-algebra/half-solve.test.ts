import { describe, expect, it } from 'vitest';
import { factorise } from '../../src/linear-algebra/factor.ts';
import { graphOf } from '../../src/linear-algebra/graph.ts';
import { addScaled, dot, dotDense, halfSolve } from '../../src/linear-algebra/half-solve.ts';
import { order } from '../../src/linear-algebra/order.ts';
import { backward, forward, solve } from '../../src/linear-algebra/solve.ts';
import { addRow, dotRow, sparseRow } from '../../src/linear-algebra/sparse-row.ts';
import { analyse } from '../../src/linear-algebra/symbolic.ts';
import { grid, randomSystem } from './systems.ts';

const drawing = grid(30, 25);
const K = randomSystem(drawing.n, drawing.edges, 11);
const factor = factorise(analyse(K, order(graphOf(K), drawing.x, drawing.y)), K);
const rows = [
  sparseRow([0], [1]),
  sparseRow([3 * 700, 3 * 12 + 2, 3 * 701 + 1], [0.5, -2, 0.25]),
  sparseRow([3 * 400 + 1, 3 * 401, 3 * 431, 3 * 430 + 2], [1, 2, 3, 4]),
  sparseRow([], []),
];
const halves = rows.map((row) => halfSolve(factor, row));
const spread = (k: number): Float64Array => {
  const b = new Float64Array(3 * K.n);
  addRow(b, 1, rows[k]);
  return b;
};
const largest = (v: Float64Array): number => v.reduce((max, value) => Math.max(max, Math.abs(value)), 0);

describe('halfSolve', () => {
  it.each(Array.from(rows.keys()))('is the dense forward solve of row %i', (k) => {
    const y = forward(factor, spread(k));
    const scale = largest(y);
    addScaled(y, -1, halves[k]);
    expect(largest(y)).toBeLessThanOrEqual(1e-15 * scale);
  });

  it('visits one path of the tree only', () => {
    expect(halves[0].value.length).toBeLessThan(0.4 * 3 * K.n);
    expect(halves[3].value.length).toBe(0);
  });

  it('gives c_i K^-1 c_j^T by dot products', () => {
    const columns = rows.map((_, k) => solve(factor, spread(k)));
    for (let i = 0; i < rows.length; i++)
      for (let j = 0; j < rows.length; j++) {
        const scale = Math.sqrt(dotRow(rows[i], columns[i]) * dotRow(rows[j], columns[j]));
        expect(Math.abs(dot(halves[i], halves[j]) - dotRow(rows[i], columns[j]))).toBeLessThanOrEqual(1e-13 * scale);
      }
  });

  it('meets dense vectors in elimination order', () => {
    const f = Float64Array.from({ length: 3 * K.n }, (_, i) => Math.cos(i));
    const y = forward(factor, f);
    const u = backward(factor, y);
    expect(dotDense(halves[2], y)).toBeCloseTo(dotRow(rows[2], u), 12);
    addScaled(y, -0.75, halves[2]);
    const g = f.slice();
    addRow(g, -0.75, rows[2]);
    const expected = solve(factor, g);
    const got = backward(factor, y);
    expect(largest(got.map((value, i) => value - expected[i]))).toBeLessThan(1e-14 * largest(expected));
  });
});
