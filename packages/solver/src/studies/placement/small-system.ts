/*
 * A small dense system solved in place, without a new array: a search solves hundreds of thousands of them.
 */

/**
 * LU with row pivoting, in place.
 *
 * @param A `[n * n]` row-major, scaled to entries of order one
 * @param pivot `[n]` out: row taken at each step
 * @param least pivot that still counts
 * @returns false when the matrix is singular
 */
export function factoriseSmall(A: Float64Array, n: number, pivot: Uint32Array, least: number): boolean {
  for (let k = 0; k < n; k++) {
    let p = k;
    let most = Math.abs(A[k * n + k]);
    for (let i = k + 1; i < n; i++) {
      const size = Math.abs(A[i * n + k]);
      if (size > most) {
        most = size;
        p = i;
      }
    }
    if (!(most > least)) return false;
    pivot[k] = p;
    if (p !== k)
      for (let j = 0; j < n; j++) {
        const swapped = A[k * n + j];
        A[k * n + j] = A[p * n + j];
        A[p * n + j] = swapped;
      }
    const inverse = 1 / A[k * n + k];
    for (let i = k + 1; i < n; i++) {
      const share = A[i * n + k] * inverse;
      if (share === 0) continue;
      A[i * n + k] = share;
      for (let j = k + 1; j < n; j++) A[i * n + j] -= share * A[k * n + j];
    }
  }
  return true;
}

/** Solves with the factors of {@link factoriseSmall}, in place: b `[n]` becomes x. */
export function solveSmall(A: Float64Array, n: number, pivot: Uint32Array, b: Float64Array): void {
  for (let k = 0; k < n; k++) {
    const p = pivot[k];
    if (p === k) continue;
    const swapped = b[k];
    b[k] = b[p];
    b[p] = swapped;
  }
  for (let i = 1; i < n; i++) {
    let sum = b[i];
    for (let j = 0; j < i; j++) sum -= A[i * n + j] * b[j];
    b[i] = sum;
  }
  for (let i = n - 1; i >= 0; i--) {
    let sum = b[i];
    for (let j = i + 1; j < n; j++) sum -= A[i * n + j] * b[j];
    b[i] = sum / A[i * n + i];
  }
}
