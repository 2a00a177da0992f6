import { Fault } from '../fault/fault.ts';
import type { BlockMatrix } from './block-matrix.ts';
import type { DenseKernel, FrontMemory } from './dense-kernel.ts';
import { children, NONE } from './elimination-tree.ts';
import { extendAdd } from './extend-add.ts';
import { strideOf, triangleRow, triangleSize } from './front-layout.ts';
import { plainKernel } from './plain-kernel.ts';
import { type Symbolic, tallestBelow } from './symbolic.ts';

/** Cholesky factor `P K P^T = L L^T` of a symmetric positive definite block matrix. */
export interface Factor {
  readonly symbolic: Symbolic;
  /** `memory.value[0 .. symbolic.factorSize)` holds L, the reciprocals of its diagonal in the diagonal's place. */
  readonly memory: FrontMemory;
  /** Address of scratch space in that memory, where the update triangles were: a vector of all dofs, then one front's. */
  readonly scratch: number;
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
 * matrix is singular (a free rigid-body motion), indefinite, or holds a number that is not finite
 */
export function factorise(symbolic: Symbolic, matrix: BlockMatrix, kernel: DenseKernel = plainKernel): Factor {
  const { n, first, parent, rowStart, pivotAt, belowAt, updateAt, factorSize, stackSize } = symbolic;
  const scratchSize = 3 * (n + tallestBelow(symbolic));
  const memory = kernel.open(factorSize + Math.max(stackSize, scratchSize));
  const { value } = memory;
  const { firstChild, nextSibling } = children(parent);
  for (let s = 0; s < parent.length; s++) {
    const width = first[s + 1] - first[s];
    const below = rowStart[s + 1] - rowStart[s];
    const update = factorSize + updateAt[s];
    value.fill(0, update, update + triangleSize(below));
    enterBlocks(symbolic, matrix, s, value);
    for (let c = firstChild[s]; c !== NONE; c = nextSibling[c]) extendAdd(symbolic, c, value, factorSize);
    const failed = memory.factorPivot(pivotAt[s], width);
    requirePositive(symbolic, matrix, s, value, failed);
    if (below === 0) continue;
    memory.solveBelow(pivotAt[s], width, belowAt[s], below);
    memory.subtractProduct(belowAt[s], width, below, update);
  }
  return { symbolic, memory, scratch: factorSize };
}

/** Puts the blocks of the matrix into a front that is still empty. */
function enterBlocks({ entries }: Symbolic, matrix: BlockMatrix, s: number, value: Float64Array): void {
  const { start, block, at, stride } = entries;
  const from = matrix.value;
  for (let k = start[s]; k < start[s + 1]; k++) {
    const turned = block[k] < 0;
    const b = 9 * (turned ? -1 - block[k] : block[k]);
    // The front stores columns, the matrix rows: turning a block over the diagonal undoes the transposition.
    const down = turned ? 1 : 3;
    const across = turned ? 3 : 1;
    let to = at[k];
    value[to] = from[b];
    value[to + 1] = from[b + down];
    value[to + 2] = from[b + 2 * down];
    to += stride[k];
    value[to] = from[b + across];
    value[to + 1] = from[b + across + down];
    value[to + 2] = from[b + across + 2 * down];
    to += stride[k];
    value[to] = from[b + 2 * across];
    value[to + 1] = from[b + 2 * across + down];
    value[to + 2] = from[b + 2 * across + 2 * down];
  }
}

/** Checks the pivots of one supernode up to the column where the kernel stopped. */
function requirePositive(symbolic: Symbolic, matrix: BlockMatrix, s: number, value: Float64Array, failed: number) {
  const { n, first, permutation, pivotAt } = symbolic;
  const least = LEAST_PIVOT * n;
  const width = first[s + 1] - first[s];
  for (let k = 0; k < width; k++) {
    const node = permutation[first[s] + k];
    const diagonal = 9 * (matrix.start[node + 1] - 1);
    const stride = strideOf(width, k);
    const at = pivotAt[s] + triangleRow(width, k) + 3 * k * stride;
    for (let a = 0; a < 3; a++) {
      const original = matrix.value[diagonal + 4 * a];
      const reciprocal = value[at + a * (stride + 1)];
      const sound = 3 * k + a !== failed && 1 > least * original * reciprocal * reciprocal;
      if (!sound) refuse(node, a, original);
    }
  }
}

function refuse(node: number, dof: number, diagonal: number): never {
  throw new Fault(
    'NOT_DEFINITE',
    `The stiffness is not positive definite at node ${node}, dof ${dof}: the structure is free to move there, or a stiffness is zero, negative or not finite. Check the supports and the sections.`,
    '',
    { node, dof, diagonal },
  );
}
