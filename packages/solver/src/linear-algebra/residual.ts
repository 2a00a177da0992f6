import type { BlockMatrix } from './block-matrix.ts';
import { multiply } from './multiply.ts';

/**
 * Scaled residual `|K u - f| / (|K| |u| + |f|)` in maximum norms: the normwise backward error of u (Rigal and Gaches
 * 1967). Near 1e-16 for a backward stable solve; 0 when K u = f = 0.
 *
 * @param u `[3 * n]` in node order
 * @param f `[3 * n]` in node order
 * @param norm of the matrix, from {@link rowSumNorm}, when it is at hand
 */
export function scaledResidual(
  matrix: BlockMatrix,
  u: Float64Array,
  f: Float64Array,
  norm: number = rowSumNorm(matrix),
): number {
  const r = multiply(matrix, u);
  for (let i = 0; i < r.length; i++) r[i] -= f[i];
  const scale = norm * maxNorm(u) + maxNorm(f);
  return scale === 0 ? 0 : maxNorm(r) / scale;
}

/** Largest sum of magnitudes in a row: the maximum norm of a matrix. */
export function rowSumNorm({ n, start, column, value }: BlockMatrix): number {
  const sum = new Float64Array(3 * n);
  for (let i = 0; i < n; i++)
    for (let k = start[i]; k < start[i + 1]; k++)
      for (let a = 0; a < 3; a++)
        for (let b = 0; b < 3; b++) {
          const size = Math.abs(value[9 * k + 3 * a + b]);
          sum[3 * i + a] += size;
          if (column[k] !== i) sum[3 * column[k] + b] += size;
        }
  return maxNorm(sum);
}

function maxNorm(v: Float64Array): number {
  let max = 0;
  for (let i = 0; i < v.length; i++) max = Math.max(max, Math.abs(v[i]));
  return max;
}
