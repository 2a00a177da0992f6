import type { SparseRow } from './block-matrix.ts';

/**
 * Row from entries in any order; entries of the same dof are summed.
 *
 * @param dof scalar dofs `3 * node + a`
 * @param value one for each dof
 */
export function sparseRow(dof: ArrayLike<number>, value: ArrayLike<number>): SparseRow {
  const byDof = Array.from(dof, (_, k) => k).sort((p, q) => dof[p] - dof[q] || p - q);
  const dofs: number[] = [];
  const values: number[] = [];
  for (const k of byDof) {
    if (dofs.length > 0 && dofs[dofs.length - 1] === dof[k]) values[values.length - 1] += value[k];
    else {
      dofs.push(dof[k]);
      values.push(value[k]);
    }
  }
  return { dof: Uint32Array.from(dofs), value: Float64Array.from(values) };
}

/** `c u` with u dense, `[3 * n]` in node order. */
export function dotRow({ dof, value }: SparseRow, u: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < dof.length; k++) sum += value[k] * u[dof[k]];
  return sum;
}

/** `u <- u + alpha c^T` with u dense, `[3 * n]` in node order. */
export function addRow(u: Float64Array, alpha: number, { dof, value }: SparseRow): void {
  for (let k = 0; k < dof.length; k++) u[dof[k]] += alpha * value[k];
}

/** `alpha c`. */
export function scaleRow(alpha: number, { dof, value }: SparseRow): SparseRow {
  return { dof, value: value.map((v) => alpha * v) };
}

/** Sum of all values, whatever their dofs. */
export function sumRow({ value }: SparseRow): number {
  let sum = 0;
  for (let k = 0; k < value.length; k++) sum += value[k];
  return sum;
}
