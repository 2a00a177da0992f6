import { Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { multiply } from '../../src/linear-algebra/multiply.ts';
import { rowSumNorm, scaledResidual } from '../../src/linear-algebra/residual.ts';
import { addRow, dotRow, scaleRow, sparseRow, sumRow } from '../../src/linear-algebra/sparse-row.ts';
import { dense, grid, randomSystem, uniform } from './systems.ts';

const drawing = grid(8, 7);
const K = randomSystem(drawing.n, drawing.edges, 4);
const full = new Matrix(dense(K));
const next = uniform(5);
const u = Float64Array.from({ length: 3 * K.n }, () => 2 * next() - 1);

describe('multiply', () => {
  it('is the dense product', () => {
    const expected = full.mmul(Matrix.columnVector(u)).to1DArray();
    multiply(K, u).forEach((value, i) => {
      expect(value).toBeCloseTo(expected[i], 12);
    });
  });
});

describe('scaledResidual', () => {
  it('is |K u - f| / (|K| |u| + |f|)', () => {
    const f = Float64Array.from({ length: 3 * K.n }, () => next());
    const max = (v: Iterable<number>) => Math.max(...Array.from(v, Math.abs));
    const norm = max(full.to2DArray().map((row) => row.reduce((sum, value) => sum + Math.abs(value), 0)));
    expect(rowSumNorm(K)).toBeCloseTo(norm, 12);
    const difference = full.mmul(Matrix.columnVector(u)).sub(Matrix.columnVector(f)).to1DArray();
    expect(scaledResidual(K, u, f)).toBeCloseTo(max(difference) / (norm * max(u) + max(f)), 14);
  });

  it('is zero for nothing', () => {
    expect(scaledResidual(K, new Float64Array(3 * K.n), new Float64Array(3 * K.n))).toBe(0);
  });
});

describe('sparseRow', () => {
  it('sorts its dofs and sums repeats', () => {
    const row = sparseRow([7, 2, 7, 0], [1, 2, 3, 4]);
    expect(Array.from(row.dof)).toEqual([0, 2, 7]);
    expect(Array.from(row.value)).toEqual([4, 2, 4]);
  });

  it('meets dense vectors', () => {
    const row = sparseRow([1, 3], [2, -1]);
    expect(dotRow(row, Float64Array.of(5, 6, 7, 8))).toBe(4);
    const v = Float64Array.of(1, 1, 1, 1);
    addRow(v, 10, row);
    expect(Array.from(v)).toEqual([1, 21, 1, -9]);
    expect(Array.from(scaleRow(3, row).value)).toEqual([6, -3]);
    expect(sumRow(row)).toBe(1);
  });
});
