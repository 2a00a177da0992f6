import type { SparseRow } from '../linear-algebra/block-matrix.ts';
import type { Factor } from '../linear-algebra/factor.ts';
import { dot, type HalfSolve, halfSolve } from '../linear-algebra/half-solve.ts';
import { dotRow } from '../linear-algebra/sparse-row.ts';
import type { RigidMotion } from './rigid-motion.ts';

/** Which way a support acts: pull holds back motion along +z only, push motion along -z only. */
type Acts = 'both' | 'pull' | 'push';

/** A support as it meets the dofs. */
export interface Support {
  readonly name: string;
  /** Average of w over the bearing, as a row over dofs in local axes. */
  readonly row: SparseRow;
  /** N/mm; `null` = rigid. */
  readonly stiffness: number | null;
  /** Both ways if left out. */
  readonly acts?: Acts;
  /** Where the plate is held to, mm along +z; 0 if left out. */
  readonly height?: number;
}

/** A support with all that the grounded factor has to say about it. Depends on its place alone, not on the others. */
export interface SupportSolve {
  readonly support: Support;
  /** `L^-1 c`: the forward half of its compliance column. */
  readonly half: HalfSolve;
  /** `c N`: its share in each free rigid motion, `[r]`. */
  readonly motion: Float64Array;
}

/** Forward half-solve of one support: all that has to be renewed when it moves. */
export function solveSupport(factor: Factor, motion: RigidMotion, support: Support): SupportSolve {
  return {
    support,
    half: halfSolve(factor, support.row),
    motion: Float64Array.from(motion.fields, (field) => dotRow(support.row, field)),
  };
}

/** `G = C K^-1 C^T` of the grounded plate from dot products of half-solves, `[m * m]` row-major, mm/N. */
export function complianceMatrix(supports: readonly SupportSolve[]): Float64Array {
  const m = supports.length;
  const G = new Float64Array(m * m);
  for (let i = 0; i < m; i++)
    for (let j = 0; j <= i; j++) {
      const value = dot(supports[i].half, supports[j].half);
      G[i * m + j] = value;
      G[j * m + i] = value;
    }
  return G;
}
