import { amalgamate } from './amalgamate.ts';
import type { BlockPattern } from './block-matrix.ts';
import { columnCounts } from './column-count.ts';
import { eliminationTree, NONE, postorder } from './elimination-tree.ts';
import { type EntryMap, mapEntries } from './entry-map.ts';
import { rectangleSize, triangleSize } from './front-layout.ts';
import { graphOf } from './graph.ts';
import { type Schedule, schedule } from './schedule.ts';
import { fundamentalSupernodes, type Supernodes } from './supernode.ts';

/** All that the sparsity pattern and the order decide about a factorisation. Positions count block rows as eliminated. */
export interface Symbolic {
  /** Number of block rows. */
  readonly n: number;
  /** `[n]` node eliminated k-th. */
  readonly permutation: Uint32Array;
  /** `[n]` position of each node: the inverse. */
  readonly position: Uint32Array;
  /** `[nSupernodes + 1]` first position of each supernode; its pivot columns run up to the next one's. */
  readonly first: Uint32Array;
  /** `[nSupernodes]` parent supernode, always a later one; -1 for a root. */
  readonly parent: Int32Array;
  /** `[n]` supernode of each position. */
  readonly supernodeOf: Uint32Array;
  /** `[nSupernodes + 1]` into `row` and `relative`. */
  readonly rowStart: Uint32Array;
  /** Positions of the block rows below the pivot columns, ascending within each supernode. */
  readonly row: Uint32Array;
  /** Where each of those rows stands among the rows of the parent's front. */
  readonly relative: Uint32Array;
  /** `[nSupernodes]` address of the pivot triangle in the factor. */
  readonly pivotAt: Uint32Array;
  /** `[nSupernodes]` */
  readonly belowAt: Uint32Array;
  /** Numbers that the factor takes. */
  readonly factorSize: number;
  /** How the fronts are shared out, and where their updates stand meanwhile. */
  readonly schedule: Schedule;
  /** Where the entries of the matrix go. */
  readonly entries: EntryMap;
  /** Scalar entries of the factor's lower triangle, zeros stored by relaxed supernodes included. */
  readonly nonZeros: number;
  /** Additions and multiplications of the numeric factorisation. */
  readonly flops: number;
}

/**
 * Symbolic factorisation: elimination tree, column counts, relaxed supernodes, their rows and addresses.
 *
 * @param permutation `[n]` node eliminated k-th, as from `order`; it is refined to a postorder of the supernodes
 */
export function analyse(pattern: BlockPattern, permutation: Uint32Array): Symbolic {
  const graph = graphOf(pattern);
  const tree = eliminationTree(graph, permutation, inverse(permutation));
  const depthFirst = postorder(tree);
  const first = permuted(permutation, depthFirst);
  const parent = renumbered(tree, depthFirst);
  const count = columnCounts(graph, first, inverse(first), parent);
  const { supernodes, sequence } = amalgamate(fundamentalSupernodes(parent, count));
  const final = permuted(first, sequence);
  const position = inverse(final);
  const layout = addresses(supernodes);
  const rows = rowStructure(pattern, supernodes, position, final, graph);
  const structure = { n: pattern.n, permutation: final, position, ...supernodes, ...rows, ...layout };
  const { nonZeros, byFront, flops } = arithmetic(supernodes);
  return {
    ...structure,
    entries: mapEntries(pattern, structure),
    schedule: schedule(supernodes, byFront),
    nonZeros,
    flops,
  };
}

/** `sequence` applied after `permutation`. */
function permuted(permutation: Uint32Array, sequence: Uint32Array): Uint32Array {
  const result = new Uint32Array(sequence.length);
  for (let k = 0; k < sequence.length; k++) result[k] = permutation[sequence[k]];
  return result;
}

function inverse(permutation: Uint32Array): Uint32Array {
  const position = new Uint32Array(permutation.length);
  for (let k = 0; k < permutation.length; k++) position[permutation[k]] = k;
  return position;
}

/** Tree on the positions of `sequence`. */
function renumbered(parent: Int32Array, sequence: Uint32Array): Int32Array {
  const position = inverse(sequence);
  const result = new Int32Array(parent.length);
  for (let k = 0; k < parent.length; k++) {
    const up = parent[sequence[k]];
    result[k] = up === NONE ? NONE : position[up];
  }
  return result;
}

/** Rows below each supernode by climbing its row subtrees (Liu 1990), which yields them in ascending order. */
function rowStructure(
  { n }: BlockPattern,
  { first, parent, height }: Supernodes,
  position: Uint32Array,
  permutation: Uint32Array,
  graph: ReturnType<typeof graphOf>,
) {
  const count = parent.length;
  const supernodeOf = new Uint32Array(n);
  const rowStart = new Uint32Array(count + 1);
  for (let s = 0; s < count; s++) {
    supernodeOf.fill(s, first[s], first[s + 1]);
    rowStart[s + 1] = rowStart[s] + height[s] - (first[s + 1] - first[s]);
  }
  const row = new Uint32Array(rowStart[count]);
  const next = rowStart.slice(0, count);
  const mark = new Int32Array(count).fill(NONE);
  for (let i = 0; i < n; i++) {
    mark[supernodeOf[i]] = i;
    const v = permutation[i];
    for (let e = graph.start[v]; e < graph.start[v + 1]; e++) {
      const j = position[graph.neighbour[e]];
      if (j >= i) continue;
      for (let s = supernodeOf[j]; mark[s] !== i; s = parent[s]) {
        mark[s] = i;
        row[next[s]++] = i;
      }
    }
  }
  const relative = new Uint32Array(row.length);
  for (let s = 0; s < count; s++) {
    const p = parent[s];
    if (p === NONE) continue;
    const width = first[p + 1] - first[p];
    let at = rowStart[p];
    for (let k = rowStart[s]; k < rowStart[s + 1]; k++) {
      if (row[k] < first[p + 1]) relative[k] = row[k] - first[p];
      else {
        while (row[at] < row[k]) at++;
        relative[k] = width + at - rowStart[p];
      }
    }
  }
  return { supernodeOf, rowStart, row, relative };
}

/** Addresses in the factor, in the order in which a backward solve reads it: each field that is shown costs one. */
function addresses({ first, parent, height }: Supernodes) {
  const count = parent.length;
  const pivotAt = new Uint32Array(count);
  const belowAt = new Uint32Array(count);
  let end = 0;
  for (let s = count - 1; s >= 0; s--) {
    const width = first[s + 1] - first[s];
    belowAt[s] = end;
    pivotAt[s] = end + rectangleSize(height[s] - width, width);
    end = pivotAt[s] + triangleSize(width);
  }
  return { pivotAt, belowAt, factorSize: end };
}

/** Entries of the factor and arithmetic, by front and in all. */
function arithmetic({ first, parent, height }: Supernodes) {
  const byFront = new Float64Array(parent.length);
  let nonZeros = 0;
  let flops = 0;
  for (let s = 0; s < parent.length; s++) {
    const width = 3 * (first[s + 1] - first[s]);
    for (let k = 0; k < width; k++) {
      const rows = 3 * height[s] - k;
      nonZeros += rows;
      byFront[s] += rows * rows;
    }
    flops += byFront[s];
  }
  return { nonZeros, byFront, flops };
}
