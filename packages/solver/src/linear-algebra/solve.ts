import type { Factor } from './factor.ts';
import { backwardPivot, forwardPivot, multiplyBelow, subtractTransposed } from './front-solve.ts';
import { tallestBelow } from './symbolic.ts';

/**
 * `y = L^-1 P b`.
 *
 * @param b `[3 * n]` in node order
 * @returns `[3 * n]` in elimination order
 */
export function forward(factor: Factor, b: Float64Array): Float64Array {
  const { permutation, first, parent, rowStart, row, pivotAt, belowAt } = factor.symbolic;
  const m = factor.memory.value;
  const y = new Float64Array(b.length);
  for (let k = 0; k < permutation.length; k++) {
    const at = 3 * permutation[k];
    y[3 * k] = b[at];
    y[3 * k + 1] = b[at + 1];
    y[3 * k + 2] = b[at + 2];
  }
  const t = new Float64Array(3 * tallestBelow(factor.symbolic));
  for (let s = 0; s < parent.length; s++) {
    const width = first[s + 1] - first[s];
    const from = rowStart[s];
    const below = rowStart[s + 1] - from;
    forwardPivot(m, pivotAt[s], width, y, 3 * first[s]);
    multiplyBelow(m, belowAt[s], width, below, y, 3 * first[s], t);
    for (let i = 0; i < below; i++) {
      const at = 3 * row[from + i];
      y[at] -= t[3 * i];
      y[at + 1] -= t[3 * i + 1];
      y[at + 2] -= t[3 * i + 2];
    }
  }
  return y;
}

/**
 * `x = P^T L^-T y`.
 *
 * @param y `[3 * n]` in elimination order
 * @returns `[3 * n]` in node order
 */
export function backward(factor: Factor, y: Float64Array): Float64Array {
  const { permutation, first, parent, rowStart, row, pivotAt, belowAt } = factor.symbolic;
  const m = factor.memory.value;
  const z = y.slice();
  const t = new Float64Array(3 * tallestBelow(factor.symbolic));
  for (let s = parent.length - 1; s >= 0; s--) {
    const width = first[s + 1] - first[s];
    const from = rowStart[s];
    const below = rowStart[s + 1] - from;
    for (let i = 0; i < below; i++) {
      const at = 3 * row[from + i];
      t[3 * i] = z[at];
      t[3 * i + 1] = z[at + 1];
      t[3 * i + 2] = z[at + 2];
    }
    subtractTransposed(m, belowAt[s], width, below, t, z, 3 * first[s]);
    backwardPivot(m, pivotAt[s], width, z, 3 * first[s]);
  }
  const x = new Float64Array(z.length);
  for (let k = 0; k < permutation.length; k++) {
    const at = 3 * permutation[k];
    x[at] = z[3 * k];
    x[at + 1] = z[3 * k + 1];
    x[at + 2] = z[3 * k + 2];
  }
  return x;
}

/** `x = K^-1 b`, both `[3 * n]` in node order. */
export function solve(factor: Factor, b: Float64Array): Float64Array {
  return backward(factor, forward(factor, b));
}
