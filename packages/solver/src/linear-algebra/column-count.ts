import { NONE } from './elimination-tree.ts';
import type { Graph } from './graph.ts';

/**
 * Number of entries in every column of the factor, the diagonal included, in time close to the number of entries of
 * the matrix (Gilbert, Ng and Peyton 1994): each row subtree's leaves add one, the least common ancestors of
 * consecutive leaves take one off, and sums up the tree give the counts.
 *
 * @param permutation `[n]` a postorder of the elimination tree
 * @param position `[n]` inverse of the permutation
 * @param parent `[n]` elimination tree on positions
 */
export function columnCounts(
  graph: Graph,
  permutation: Uint32Array,
  position: Uint32Array,
  parent: Int32Array,
): Int32Array {
  const n = permutation.length;
  const count = new Int32Array(n).fill(1);
  const first = new Int32Array(n);
  for (let j = 0; j < n; j++) first[j] = j;
  for (let j = 0; j < n; j++) {
    const p = parent[j];
    if (p === NONE) continue;
    count[p] = 0;
    if (first[j] < first[p]) first[p] = first[j];
  }
  const previousNeighbour = new Int32Array(n).fill(NONE);
  const previousLeaf = new Int32Array(n).fill(NONE);
  const set = new Int32Array(n);
  for (let j = 0; j < n; j++) set[j] = j;

  for (let j = 0; j < n; j++) {
    if (parent[j] !== NONE) count[parent[j]]--;
    const v = permutation[j];
    for (let e = graph.start[v]; e < graph.start[v + 1]; e++) {
      const i = position[graph.neighbour[e]];
      if (i <= j) continue;
      if (first[j] > previousNeighbour[i]) {
        count[j]++;
        const leaf = previousLeaf[i];
        if (leaf !== NONE) count[find(leaf)]--;
        previousLeaf[i] = j;
      }
      previousNeighbour[i] = j;
    }
    if (parent[j] !== NONE) set[j] = parent[j];
  }
  for (let j = 0; j < n; j++) if (parent[j] !== NONE) count[parent[j]] += count[j];
  return count;

  function find(j: number): number {
    let root = j;
    while (set[root] !== root) root = set[root];
    for (let up = set[j]; up !== root; up = set[j]) {
      set[j] = root;
      j = up;
    }
    return root;
  }
}
