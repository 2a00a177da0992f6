import { CholeskyDecomposition, Matrix } from 'ml-matrix';
import type { BlockMatrix } from '../../src/linear-algebra/block-matrix.ts';

/** The whole matrix, `3n x 3n`. */
export function denseOf({ n, start, column, value }: BlockMatrix): Matrix {
  const K = Matrix.zeros(3 * n, 3 * n);
  for (let i = 0; i < n; i++)
    for (let k = start[i]; k < start[i + 1]; k++)
      for (let a = 0; a < 3; a++)
        for (let b = 0; b < 3; b++) {
          K.set(3 * i + a, 3 * column[k] + b, value[9 * k + 3 * a + b]);
          K.set(3 * column[k] + b, 3 * i + a, value[9 * k + 3 * a + b]);
        }
  return K;
}

/** u of K u = f by a dense factorisation. */
export function denseSolve(K: BlockMatrix, f: Float64Array): Float64Array {
  const cholesky = new CholeskyDecomposition(denseOf(K));
  if (!cholesky.isPositiveDefinite()) throw new Error('not positive definite');
  return Float64Array.from(cholesky.solve(Matrix.columnVector(Array.from(f))).to1DArray());
}
