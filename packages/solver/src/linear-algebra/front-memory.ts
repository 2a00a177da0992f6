import type { BlockMatrix } from './block-matrix.ts';
import type { Crew } from './crew.ts';
import { reachOfTasks } from './solve-targets.ts';
import type { Symbolic } from './symbolic.ts';

/** Arithmetic on fronts. Implementations differ in speed and in the last bits, not in meaning. */
export interface FrontKernel {
  readonly name: string;
  /**
   * Opens a memory for a factorisation.
   *
   * @param crew helpers on other threads; a kernel that can't share its memory does without
   * @throws Fault TOO_LARGE when the memory can't be had
   */
  open(symbolic: Symbolic, crew: Crew | null): FrontMemory;
}

/** All pivots are positive. */
export const DONE = -1;
/** Ended before the end because it was asked to. */
export const STOPPED = -2;
/** Ended because a helper died in the middle of its part; that crew is not called again. */
export const LOST = -3;

/**
 * One memory that holds a factor, its update triangles and afterwards the vectors of its solves, and the operations on
 * what lies in it. Addresses count numbers, sizes count 3x3 blocks; `front-layout` says how fronts lie there.
 */
export interface FrontMemory {
  /** The factor from 0 on, as the addresses of {@link Symbolic} say. Another array after a solve that was lost. */
  readonly value: Float64Array;
  /**
   * Address of room for {@link vectors} vectors, {@link apart} numbers each: all dofs, and what a front or the tasks leave
   * behind them. It lies where the updates were.
   */
  readonly scratch: number;
  readonly vectors: number;
  readonly apart: number;

  /**
   * Cholesky factor of a matrix with the pattern that was analysed; the diagonal receives `1 / l`. Once per memory.
   *
   * @param stopped asked between tasks whether to give up
   * @returns {@link DONE}, {@link STOPPED}, {@link LOST}, or the scalar position of a pivot that is not positive
   */
  factor(matrix: BlockMatrix, stopped: () => boolean): number;

  /**
   * `y <- L^-1 y` for the first vector at `scratch`, in elimination order.
   *
   * @returns false when a helper died in the middle of its part: y is lost, the solve is to be done again from its
   * beginning, by this thread alone
   */
  forward(): boolean;

  /** `y <- L^-T y` for the first `count` vectors at `scratch`, and as {@link forward} otherwise. */
  backward(count: number): boolean;

  /** `y <- L^-1 y` for the triangle at `pivot`. */
  forwardPivot(pivot: number, width: number, y: number): void;

  /** `t <- t - B y` for the rectangle at `below`. */
  forwardBelow(below: number, width: number, rows: number, y: number, t: number): void;

  /** Gives the memory back for the next factorisation, which then finds it warm; this one is not to be used again. */
  release(): void;
}

/** Room of a memory behind the factor, in numbers: for the updates of so many workers and afterwards the vectors of solves. */
export function scratchRoom(symbolic: Symbolic, workers: number): { readonly size: number } & Vectors {
  const { n, schedule, rowStart, parent } = symbolic;
  let behind = reachOfTasks(symbolic);
  for (let s = 0; s < parent.length; s++) behind = Math.max(behind, rowStart[s + 1] - rowStart[s]);
  const apart = 3 * (n + behind);
  const size = Math.max(schedule.poolSize + workers * schedule.stackSize, apart);
  return { size, apart, vectors: Math.floor(size / apart) };
}

type Vectors = Pick<FrontMemory, 'vectors' | 'apart'>;
