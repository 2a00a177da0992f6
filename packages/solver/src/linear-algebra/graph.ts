import type { BlockPattern } from './block-matrix.ts';

/** Undirected graph in both directions, without loops: vertex `v` meets `neighbour[start[v] .. start[v + 1])`. */
export interface Graph {
  /** `[n + 1]` */
  readonly start: Uint32Array;
  /** `[2 * nEdges]` */
  readonly neighbour: Uint32Array;
}

/** Graph of the off-diagonal blocks of a pattern: one vertex per block row, neighbours ascending. */
export function graphOf(pattern: BlockPattern): Graph {
  const { n, start: rowStart, column } = pattern;
  const start = new Uint32Array(n + 1);
  for (let i = 0; i < n; i++)
    for (let k = rowStart[i]; k < rowStart[i + 1]; k++) {
      const j = column[k];
      if (j === i) continue;
      start[i + 1]++;
      start[j + 1]++;
    }
  for (let i = 0; i < n; i++) start[i + 1] += start[i];
  const neighbour = new Uint32Array(start[n]);
  const next = start.slice(0, n);
  // Row i lists its lower neighbours before any later row adds i's higher ones, so every list comes out ascending.
  for (let i = 0; i < n; i++)
    for (let k = rowStart[i]; k < rowStart[i + 1]; k++) {
      const j = column[k];
      if (j === i) continue;
      neighbour[next[i]++] = j;
      neighbour[next[j]++] = i;
    }
  return { start, neighbour };
}
