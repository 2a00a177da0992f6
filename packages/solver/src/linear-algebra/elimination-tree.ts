import type { Graph } from './graph.ts';

/** No parent: a root. */
export const NONE = -1;

/**
 * Elimination tree of a graph under an elimination order, by path compression (Liu 1986, 1990).
 *
 * @param permutation `[n]` vertex eliminated k-th
 * @param position `[n]` inverse of the permutation
 * @returns `[n]` parent of each position, {@link NONE} for a root
 */
export function eliminationTree(graph: Graph, permutation: Uint32Array, position: Uint32Array): Int32Array {
  const n = permutation.length;
  const parent = new Int32Array(n).fill(NONE);
  const ancestor = new Int32Array(n).fill(NONE);
  for (let k = 0; k < n; k++) {
    const v = permutation[k];
    for (let e = graph.start[v]; e < graph.start[v + 1]; e++) {
      let j = position[graph.neighbour[e]];
      if (j >= k) continue;
      for (let up = ancestor[j]; up !== k; up = ancestor[j]) {
        ancestor[j] = k;
        if (up === NONE) {
          parent[j] = k;
          break;
        }
        j = up;
      }
    }
  }
  return parent;
}

/**
 * Depth-first order of a forest in which every parent follows its children; siblings keep their order.
 *
 * @returns `[n]` vertex that comes k-th
 */
export function postorder(parent: Int32Array): Uint32Array {
  const n = parent.length;
  const { firstChild, nextSibling, firstRoot } = children(parent);
  const sequence = new Uint32Array(n);
  let k = 0;
  for (let root = firstRoot; root !== NONE; root = nextSibling[root]) {
    let v = root;
    for (;;) {
      while (firstChild[v] !== NONE) v = firstChild[v];
      sequence[k++] = v;
      while (v !== root && nextSibling[v] === NONE) {
        v = parent[v];
        sequence[k++] = v;
      }
      if (v === root) break;
      v = nextSibling[v];
    }
  }
  return sequence;
}

/** Children of every vertex as ascending lists; roots are linked as siblings. */
export function children(parent: Int32Array): {
  readonly firstChild: Int32Array;
  readonly nextSibling: Int32Array;
  readonly firstRoot: number;
} {
  const n = parent.length;
  const firstChild = new Int32Array(n).fill(NONE);
  const nextSibling = new Int32Array(n).fill(NONE);
  let firstRoot = NONE;
  for (let v = n - 1; v >= 0; v--) {
    const p = parent[v];
    if (p === NONE) {
      nextSibling[v] = firstRoot;
      firstRoot = v;
    } else {
      nextSibling[v] = firstChild[p];
      firstChild[p] = v;
    }
  }
  return { firstChild, nextSibling, firstRoot };
}
