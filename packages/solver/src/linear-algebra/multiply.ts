import type { BlockMatrix } from './block-matrix.ts';

/** `K u` for a symmetric matrix stored by its lower triangle; `u` and the result are `[3 * n]` in node order. */
export function multiply(matrix: BlockMatrix, u: Float64Array): Float64Array {
  const { n, start, column, value } = matrix;
  const f = new Float64Array(3 * n);
  for (let i = 0; i < n; i++) {
    const u0 = u[3 * i];
    const u1 = u[3 * i + 1];
    const u2 = u[3 * i + 2];
    let f0 = 0;
    let f1 = 0;
    let f2 = 0;
    const diagonal = start[i + 1] - 1;
    for (let k = start[i]; k <= diagonal; k++) {
      const b = 9 * k;
      const j = 3 * column[k];
      const v0 = u[j];
      const v1 = u[j + 1];
      const v2 = u[j + 2];
      f0 += value[b] * v0 + value[b + 1] * v1 + value[b + 2] * v2;
      f1 += value[b + 3] * v0 + value[b + 4] * v1 + value[b + 5] * v2;
      f2 += value[b + 6] * v0 + value[b + 7] * v1 + value[b + 8] * v2;
      if (k === diagonal) break;
      f[j] += value[b] * u0 + value[b + 3] * u1 + value[b + 6] * u2;
      f[j + 1] += value[b + 1] * u0 + value[b + 4] * u1 + value[b + 7] * u2;
      f[j + 2] += value[b + 2] * u0 + value[b + 5] * u1 + value[b + 8] * u2;
    }
    f[3 * i] += f0;
    f[3 * i + 1] += f1;
    f[3 * i + 2] += f2;
  }
  return f;
}
