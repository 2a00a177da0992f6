import type { Factor } from './factor.ts';
import { backwardBelow, backwardPivot, forwardBelow, forwardPivot } from './front-solve.ts';
import { tallestBelow } from './symbolic.ts';

/**
 * `y = L^-1 P b`.
 *
 * @param b `[3 * n]` in node order
 * @returns `[3 * n]` in elimination order
 */
export function forward({ symbolic, memory }: Factor, b: Float64Array): Float64Array {
  const { permutation, first, parent, rowStart, row, pivotAt, belowAt } = symbolic;
  const y = new Float64Array(b.length);
  const t = new Float64Array(3 * tallestBelow(symbolic));
  permuteIn(permutation, b, y);
  for (let s = 0; s < parent.length; s++) {
    const width = first[s + 1] - first[s];
    const below = rowStart[s + 1] - rowStart[s];
    forwardPivot(memory.value, pivotAt[s], width, y, 3 * first[s]);
    gather(y, row, rowStart[s], below, t);
    forwardBelow(memory.value, belowAt[s], width, below, y, 3 * first[s], t);
    scatter(t, row, rowStart[s], below, y);
  }
  return y;
}

/**
 * `x = P^T L^-T y`.
 *
 * @param y `[3 * n]` in elimination order
 * @returns `[3 * n]` in node order
 */
export function backward({ symbolic, memory }: Factor, y: Float64Array): Float64Array {
  const { permutation, first, parent, rowStart, row, pivotAt, belowAt } = symbolic;
  const z = y.slice();
  const t = new Float64Array(3 * tallestBelow(symbolic));
  for (let s = parent.length - 1; s >= 0; s--) {
    const width = first[s + 1] - first[s];
    const below = rowStart[s + 1] - rowStart[s];
    gather(z, row, rowStart[s], below, t);
    backwardBelow(memory.value, belowAt[s], width, below, t, z, 3 * first[s]);
    backwardPivot(memory.value, pivotAt[s], width, z, 3 * first[s]);
  }
  const x = new Float64Array(z.length);
  permuteOut(permutation, z, x);
  return x;
}

/** `x = K^-1 b`, both `[3 * n]` in node order. */
export function solve(factor: Factor, b: Float64Array): Float64Array {
  return backward(factor, forward(factor, b));
}

function permuteIn(permutation: Uint32Array, b: Float64Array, y: Float64Array): void {
  for (let k = 0; k < permutation.length; k++) {
    const at = 3 * permutation[k];
    y[3 * k] = b[at];
    y[3 * k + 1] = b[at + 1];
    y[3 * k + 2] = b[at + 2];
  }
}

function permuteOut(permutation: Uint32Array, y: Float64Array, x: Float64Array): void {
  for (let k = 0; k < permutation.length; k++) {
    const at = 3 * permutation[k];
    x[at] = y[3 * k];
    x[at + 1] = y[3 * k + 1];
    x[at + 2] = y[3 * k + 2];
  }
}

/** `t <- y` at the block rows `row[from .. from + count)`. */
function gather(y: Float64Array, row: Uint32Array, from: number, count: number, t: Float64Array): void {
  for (let i = 0; i < count; i++) {
    const at = 3 * row[from + i];
    t[3 * i] = y[at];
    t[3 * i + 1] = y[at + 1];
    t[3 * i + 2] = y[at + 2];
  }
}

function scatter(t: Float64Array, row: Uint32Array, from: number, count: number, y: Float64Array): void {
  for (let i = 0; i < count; i++) {
    const at = 3 * row[from + i];
    y[at] = t[3 * i];
    y[at + 1] = t[3 * i + 1];
    y[at + 2] = t[3 * i + 2];
  }
}
