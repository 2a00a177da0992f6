/** Dense arithmetic on fronts. Implementations differ in speed and in the last bits, not in meaning. */
export interface DenseKernel {
  readonly name: string;
  /** Opens a memory of at least that many numbers, all zero. */
  open(size: number): FrontMemory;
}

/**
 * One memory that holds a factor, its update triangles and afterwards the vectors of its solves, and the operations on
 * what lies in it. Addresses and sizes are those of `front-layout`: addresses count numbers, sizes count 3x3 blocks.
 */
export interface FrontMemory {
  readonly value: Float64Array;

  /**
   * Cholesky factor `L L^T` of the triangle of `width` block rows at `pivot`, in place; the diagonal receives `1 / l`.
   *
   * @returns the first scalar column whose pivot is not positive, where it stops, or -1
   */
  factorPivot(pivot: number, width: number): number;

  /** `B <- B L^-T` for the rectangle of `rows` by `width` blocks at `below`. */
  solveBelow(pivot: number, width: number, below: number, rows: number): void;

  /** `U <- U - B B^T` for the triangle of `rows` block rows at `update`. */
  subtractProduct(below: number, width: number, rows: number, update: number): void;

  /** `y <- L^-1 y` for the triangle at `pivot`. */
  forwardPivot(pivot: number, width: number, y: number): void;

  /** `t <- t - B y` for the rectangle at `below`. */
  forwardBelow(below: number, width: number, rows: number, y: number, t: number): void;

  /** `y <- y - B^T t` for the rectangle at `below`. */
  backwardBelow(below: number, width: number, rows: number, t: number, y: number): void;

  /** `y <- L^-T y` for the triangle at `pivot`. */
  backwardPivot(pivot: number, width: number, y: number): void;
}
