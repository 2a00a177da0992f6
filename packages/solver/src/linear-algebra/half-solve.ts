import type { SparseRow } from './block-matrix.ts';
import { NONE } from './elimination-tree.ts';
import type { Factor } from './factor.ts';

/**
 * The non-zero part of `L^-1 P c^T` for a sparse row c: it lives on the supernodes between the row's nodes and the
 * roots of the elimination tree, since `x_j` spreads along `j -> parent(j)` only (Gilbert and Peierls 1988 for a tree).
 */
export interface HalfSolve {
  /** Supernodes visited, ascending. */
  readonly supernode: Uint32Array;
  /** `[nVisited]` where each one's part begins in elimination order, in dofs. */
  readonly to: Uint32Array;
  /** `[nVisited + 1]` where each one's part begins in `value`. */
  readonly start: Uint32Array;
  readonly value: Float64Array;
}

/** Sparse forward solve of one row: `a = L^-1 P c^T`. Then `c_i K^-1 c_j^T = dot(a_i, a_j)`. */
export function halfSolve(factor: Factor, row: SparseRow): HalfSolve {
  const { memory, symbolic } = factor;
  const { n, first, position, supernodeOf, rowStart, row: rows, pivotAt, belowAt, parent } = symbolic;
  const { value: m, scratch: y } = memory;
  const t = y + 3 * n;
  const supernode = visited(factor, row);
  const count = supernode.length;
  const to = new Uint32Array(count);
  const start = new Uint32Array(count + 1);
  // Where the part of each supernode visited begins among the packed values, less where it begins in elimination order.
  const shift = new Int32Array(parent.length);
  for (let i = 0; i < count; i++) {
    const s = supernode[i];
    to[i] = 3 * first[s];
    start[i + 1] = start[i] + 3 * (first[s + 1] - first[s]);
    shift[s] = y + start[i] - to[i];
  }
  m.fill(0, y, y + start[count]);
  for (let k = 0; k < row.dof.length; k++) {
    const node = Math.floor(row.dof[k] / 3);
    const at = position[node];
    m[3 * at + shift[supernodeOf[at]] + row.dof[k] - 3 * node] += row.value[k];
  }
  for (let i = 0; i < count; i++) {
    const s = supernode[i];
    const width = first[s + 1] - first[s];
    const from = rowStart[s];
    const below = rowStart[s + 1] - from;
    memory.forwardPivot(pivotAt[s], width, y + start[i]);
    for (let r = 0; r < below; r++) {
      const at = 3 * rows[from + r] + shift[supernodeOf[rows[from + r]]];
      m[t + 3 * r] = m[at];
      m[t + 3 * r + 1] = m[at + 1];
      m[t + 3 * r + 2] = m[at + 2];
    }
    memory.forwardBelow(belowAt[s], width, below, y + start[i], t);
    for (let r = 0; r < below; r++) {
      const at = 3 * rows[from + r] + shift[supernodeOf[rows[from + r]]];
      m[at] = m[t + 3 * r];
      m[at + 1] = m[t + 3 * r + 1];
      m[at + 2] = m[t + 3 * r + 2];
    }
  }
  return { supernode, to, start, value: m.slice(y, y + start[count]) };
}

/** Supernodes from the row's nodes to the roots, ascending. */
function visited({ symbolic }: Factor, row: SparseRow): Uint32Array {
  const { position, supernodeOf, parent } = symbolic;
  const seen = new Uint8Array(parent.length);
  const list: number[] = [];
  for (let k = 0; k < row.dof.length; k++)
    for (let s = supernodeOf[position[Math.floor(row.dof[k] / 3)]]; s !== NONE && seen[s] === 0; s = parent[s]) {
      seen[s] = 1;
      list.push(s);
    }
  return Uint32Array.from(list).sort();
}

/** `a . b` over the supernodes that both visit. */
export function dot(a: HalfSolve, b: HalfSolve): number {
  let sum = 0;
  for (let i = 0, j = 0; i < a.supernode.length && j < b.supernode.length; ) {
    if (a.supernode[i] < b.supernode[j]) i++;
    else if (a.supernode[i] > b.supernode[j]) j++;
    else {
      for (let p = a.start[i], q = b.start[j]; p < a.start[i + 1]; p++, q++) sum += a.value[p] * b.value[q];
      i++;
      j++;
    }
  }
  return sum;
}

/** `a . y` with y dense in elimination order, as from `forward`. */
export function dotDense(a: HalfSolve, y: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.supernode.length; i++)
    for (let p = a.start[i], q = a.to[i]; p < a.start[i + 1]; p++, q++) sum += a.value[p] * y[q];
  return sum;
}

/** `y <- y + alpha a` with y dense in elimination order. */
export function addScaled(y: Float64Array, alpha: number, a: HalfSolve): void {
  for (let i = 0; i < a.supernode.length; i++)
    for (let p = a.start[i], q = a.to[i]; p < a.start[i + 1]; p++, q++) y[q] += alpha * a.value[p];
}
