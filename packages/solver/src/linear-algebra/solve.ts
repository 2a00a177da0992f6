import type { Factor } from './factor.ts';

/**
 * `y = L^-1 P b`.
 *
 * @param b `[3 * n]` in node order
 * @returns `[3 * n]` in elimination order
 */
export function forward({ symbolic, memory, scratch: y }: Factor, b: Float64Array): Float64Array {
  const { n, permutation, first, parent, rowStart, row, pivotAt, belowAt } = symbolic;
  const { value } = memory;
  const t = y + 3 * n;
  permuteIn(permutation, b, value, y);
  for (let s = 0; s < parent.length; s++) {
    const width = first[s + 1] - first[s];
    const below = rowStart[s + 1] - rowStart[s];
    const here = y + 3 * first[s];
    memory.forwardPivot(pivotAt[s], width, here);
    gather(value, y, row, rowStart[s], below, t);
    memory.forwardBelow(belowAt[s], width, below, here, t);
    scatter(value, t, row, rowStart[s], below, y);
  }
  return value.slice(y, t);
}

/**
 * `x = P^T L^-T y`.
 *
 * @param y `[3 * n]` in elimination order
 * @returns `[3 * n]` in node order
 */
export function backward({ symbolic, memory, scratch: z }: Factor, y: Float64Array): Float64Array {
  const { n, permutation, first, parent, rowStart, row, pivotAt, belowAt } = symbolic;
  const { value } = memory;
  const t = z + 3 * n;
  value.set(y, z);
  for (let s = parent.length - 1; s >= 0; s--) {
    const width = first[s + 1] - first[s];
    const below = rowStart[s + 1] - rowStart[s];
    const here = z + 3 * first[s];
    gather(value, z, row, rowStart[s], below, t);
    memory.backwardBelow(belowAt[s], width, below, t, here);
    memory.backwardPivot(pivotAt[s], width, here);
  }
  const x = new Float64Array(3 * n);
  permuteOut(permutation, value, z, x);
  return x;
}

/** `x = K^-1 b`, both `[3 * n]` in node order. */
export function solve(factor: Factor, b: Float64Array): Float64Array {
  return backward(factor, forward(factor, b));
}

/** Puts b into elimination order, from `y` on. */
function permuteIn(permutation: Uint32Array, b: Float64Array, m: Float64Array, y: number): void {
  for (let k = 0; k < permutation.length; k++, y += 3) {
    const at = 3 * permutation[k];
    m[y] = b[at];
    m[y + 1] = b[at + 1];
    m[y + 2] = b[at + 2];
  }
}

/** Puts what lies from `y` on back into node order. */
function permuteOut(permutation: Uint32Array, m: Float64Array, y: number, x: Float64Array): void {
  for (let k = 0; k < permutation.length; k++, y += 3) {
    const at = 3 * permutation[k];
    x[at] = m[y];
    x[at + 1] = m[y + 1];
    x[at + 2] = m[y + 2];
  }
}

/** `t <- y` at the block rows `row[from .. from + count)`. */
function gather(m: Float64Array, y: number, row: Uint32Array, from: number, count: number, t: number): void {
  for (let i = from; i < from + count; i++, t += 3) {
    const at = y + 3 * row[i];
    m[t] = m[at];
    m[t + 1] = m[at + 1];
    m[t + 2] = m[at + 2];
  }
}

/** `y <- t` at the block rows `row[from .. from + count)`. */
function scatter(m: Float64Array, t: number, row: Uint32Array, from: number, count: number, y: number): void {
  for (let i = from; i < from + count; i++, t += 3) {
    const at = y + 3 * row[i];
    m[at] = m[t];
    m[at + 1] = m[t + 1];
    m[at + 2] = m[t + 2];
  }
}
