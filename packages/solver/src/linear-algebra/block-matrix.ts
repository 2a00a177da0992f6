/**
 * Symmetric sparse matrix of 3x3 blocks, one block row per node; the lower triangle with its diagonal is stored.
 * Scalar row `3 * i + a` belongs to block row `i`.
 */
export interface BlockMatrix extends BlockPattern {
  /** `[9 * nBlocks]`, row-major within a block. Diagonal blocks are stored whole and symmetric. */
  readonly value: Float64Array;
}

/** Where the blocks of a {@link BlockMatrix} stand. */
export interface BlockPattern {
  /** Number of block rows. */
  readonly n: number;
  /** `[n + 1]` first block of each block row. */
  readonly start: Uint32Array;
  /** `[nBlocks]` block columns, ascending within a row, never above the row; the last of each row is the diagonal. */
  readonly column: Uint32Array;
}

/** A row vector over dofs with few non-zeros: a load, a support or a sample as it meets the dofs. */
export interface SparseRow {
  /** Scalar dofs `3 * node + a`, ascending, no repeats. */
  readonly dof: Uint32Array;
  readonly value: Float64Array;
}
