import { Fault } from '../fault/fault.ts';
import type { BlockMatrix } from './block-matrix.ts';
import type { Crew } from './crew.ts';
import { NONE } from './elimination-tree.ts';
import { strideOf, triangleRow } from './front-layout.ts';
import { DONE, type FrontKernel, type FrontMemory, LOST, STOPPED } from './front-memory.ts';
import { plainKernel } from './plain-kernel.ts';
import type { Symbolic } from './symbolic.ts';

/** Cholesky factor `P K P^T = L L^T` of a symmetric positive definite block matrix. */
export interface Factor {
  readonly symbolic: Symbolic;
  /** `memory.value[0 .. symbolic.factorSize)` holds L, the reciprocals of its diagonal in the diagonal's place. */
  readonly memory: FrontMemory;
}

export interface FactorOptions {
  /** Plain TypeScript if left out. */
  readonly kernel?: FrontKernel;
  /** Helpers to share the work with; the factor has the same bits with and without. */
  readonly crew?: Crew | null;
  /** Asked now and then whether the factor is still wanted. */
  readonly stopped?: () => boolean;
}

/**
 * Smallest pivot that counts as positive: this times the number of block rows, relative to the diagonal entry that it
 * started from. Rounding leaves a pivot that should be zero at up to about n eps of its diagonal; the pivot of the last
 * deflection of a plate held in earnest falls with 1/n as well, but from some 1e-3 (a strip of aspect 30: from 1e-4).
 * A plate that can still turn about a line may show in a rotation only, whose rounding reaches n^1.5 eps, and pass:
 * motions of that kind are found by their energy before.
 */
const LEAST_PIVOT = 8 * Number.EPSILON;

/**
 * Numeric multifrontal factorisation (Duff and Reid 1983; Liu 1992).
 *
 * @throws Fault NOT_DEFINITE with `details.node` when a pivot is not positive relative to its diagonal entry: the
 * matrix is singular (a free rigid-body motion), indefinite, or holds a number that is not finite; CANCELLED when
 * `stopped` said so; TOO_LARGE
 */
export function factorise(symbolic: Symbolic, matrix: BlockMatrix, options: FactorOptions = {}): Factor {
  const { kernel = plainKernel, crew = null, stopped = () => false } = options;
  const memory = kernel.open(symbolic, crew);
  const failed = memory.factor(matrix, stopped);
  if (failed === STOPPED) throw new Fault('CANCELLED', 'The solve was given up for a newer one.', '', {});
  // The memory is left to the dead.
  if (failed === LOST) return factorise(symbolic, matrix, { kernel, stopped });
  // Which of several bad pivots a crew meets first is left to chance: alone it is always the same one.
  if (failed !== DONE && crew !== null) return factorise(symbolic, matrix, { kernel });
  requirePositive(symbolic, matrix, memory.value, failed);
  return { symbolic, memory };
}

/** Checks all pivots, or those that led to the one where the kernel stopped. */
function requirePositive(symbolic: Symbolic, matrix: BlockMatrix, value: Float64Array, failed: number): void {
  const { n, first, permutation, pivotAt, supernodeOf } = symbolic;
  const least = LEAST_PIVOT * n;
  const end = failed === DONE ? 3 * n : failed;
  for (let k = failed === DONE ? 0 : firstBelow(symbolic, Math.floor(failed / 3)); 3 * k < end; k++) {
    const s = supernodeOf[k];
    const width = first[s + 1] - first[s];
    const row = k - first[s];
    const stride = strideOf(width, row);
    const at = pivotAt[s] + triangleRow(width, row) + 3 * row * stride;
    const diagonal = 9 * (matrix.start[permutation[k] + 1] - 1);
    for (let a = 0; a < 3 && 3 * k + a < end; a++) {
      const original = matrix.value[diagonal + 4 * a];
      const reciprocal = value[at + a * (stride + 1)];
      if (!(1 > least * original * reciprocal * reciprocal)) refuse(permutation[k], a, original);
    }
  }
  if (failed === DONE) return;
  const node = permutation[Math.floor(failed / 3)];
  const dof = failed % 3;
  refuse(node, dof, matrix.value[9 * (matrix.start[node + 1] - 1) + 4 * dof]);
}

/** First position in the subtree of a position's supernode: descendants come right before it. */
function firstBelow({ first, parent, supernodeOf }: Symbolic, position: number): number {
  const top = supernodeOf[position];
  let s = top;
  while (s > 0 && parent[s - 1] !== NONE && parent[s - 1] <= top) s--;
  return first[s];
}

function refuse(node: number, dof: number, diagonal: number): never {
  throw new Fault(
    'NOT_DEFINITE',
    `The stiffness is not positive definite at node ${node}, dof ${dof}: the structure is free to move there, or a stiffness is zero, negative or not finite. Check the supports and the sections.`,
    '',
    { node, dof, diagonal },
  );
}
