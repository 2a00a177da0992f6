import { children, NONE } from './elimination-tree.ts';

/** Runs of columns that are eliminated together, children before parents. */
export interface Supernodes {
  /** `[nSupernodes + 1]` first position of each supernode. */
  readonly first: Uint32Array;
  /** `[nSupernodes]` parent supernode, {@link NONE} for a root. */
  readonly parent: Int32Array;
  /** `[nSupernodes]` block rows of the front: own columns and those below. */
  readonly height: Uint32Array;
}

/** Maximal runs of columns with the same structure below them (Liu, Ng and Peyton 1993: fundamental supernodes). */
export function fundamentalSupernodes(parent: Int32Array, count: Int32Array): Supernodes {
  const n = parent.length;
  const { firstChild, nextSibling } = children(parent);
  const starts: number[] = [];
  const supernodeOf = new Uint32Array(n);
  for (let j = 0; j < n; j++) {
    const joins = j > 0 && firstChild[j] === j - 1 && nextSibling[j - 1] === NONE && count[j - 1] === count[j] + 1;
    if (!joins) starts.push(j);
    supernodeOf[j] = starts.length - 1;
  }
  const nSupernodes = starts.length;
  starts.push(n);
  const first = Uint32Array.from(starts);
  const parentOf = new Int32Array(nSupernodes);
  const height = new Uint32Array(nSupernodes);
  for (let s = 0; s < nSupernodes; s++) {
    const up = parent[first[s + 1] - 1];
    parentOf[s] = up === NONE ? NONE : supernodeOf[up];
    height[s] = count[first[s]];
  }
  return { first, parent: parentOf, height };
}
