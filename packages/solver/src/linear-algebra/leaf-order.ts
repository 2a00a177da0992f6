import type { Graph } from './graph.ts';
import { minimumDegree } from './minimum-degree.ts';

/** Room for ordering the leaves of one graph. */
export interface LeafWork {
  /** `[n]` number of a vertex within the leaf or its halo, or {@link OUTSIDE}. */
  readonly local: Int32Array;
  /** `[n]` vertices of the halo. */
  readonly halo: Uint32Array;
  /** `[most]` elimination sequence. */
  readonly sequence: Uint32Array;
  /** Bit rows of the leaf's adjacency. */
  readonly adjacency: Uint32Array;
}

const OUTSIDE = -1;

/** @param most vertices in a leaf at most */
export function leafWork(n: number, most: number): LeafWork {
  return {
    local: new Int32Array(n).fill(OUTSIDE),
    halo: new Uint32Array(n),
    sequence: new Uint32Array(most),
    adjacency: new Uint32Array(most * ((n + 31) >>> 5)),
  };
}

/** Puts the vertices of a leaf into minimum-degree order, with all their other neighbours as the halo. */
export function orderLeaf({ start, neighbour }: Graph, vertices: Uint32Array, work: LeafWork): void {
  const { local, halo, sequence, adjacency } = work;
  const inner = vertices.length;
  for (let i = 0; i < inner; i++) local[vertices[i]] = i;
  let outer = 0;
  for (let i = 0; i < inner; i++)
    for (let e = start[vertices[i]]; e < start[vertices[i] + 1]; e++) {
      const u = neighbour[e];
      if (local[u] !== OUTSIDE) continue;
      local[u] = inner + outer;
      halo[outer++] = u;
    }
  const words = (inner + outer + 31) >>> 5;
  adjacency.fill(0, 0, inner * words);
  for (let i = 0; i < inner; i++)
    for (let e = start[vertices[i]]; e < start[vertices[i] + 1]; e++) {
      const j = local[neighbour[e]];
      adjacency[i * words + (j >>> 5)] |= 1 << (j & 31);
    }
  minimumDegree(inner, words, adjacency, sequence);
  for (let k = 0; k < inner; k++) sequence[k] = vertices[sequence[k]];
  for (let k = 0; k < inner; k++) {
    local[vertices[k]] = OUTSIDE;
    vertices[k] = sequence[k];
  }
  for (let k = 0; k < outer; k++) local[halo[k]] = OUTSIDE;
}
