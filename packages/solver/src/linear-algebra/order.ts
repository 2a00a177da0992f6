import type { Graph } from './graph.ts';
import { minimumDegree } from './minimum-degree.ts';
import { AFTER, BEFORE, type SplitWork, split } from './separator.ts';

/** Parts up to this size are ordered by minimum degree. */
const LEAF = 64;

/**
 * Fill-reducing elimination order by geometric nested dissection (George 1973): halve the part, number the separator
 * last, go on with the halves; small parts by minimum degree. Near-linear time, deterministic.
 *
 * @param x `[n]` coordinates in which the graph is drawn, any unit
 * @param y `[n]`
 * @returns `[n]` vertex eliminated k-th
 */
export function order(graph: Graph, x: Float64Array, y: Float64Array): Uint32Array {
  const n = graph.start.length - 1;
  const permutation = new Uint32Array(n);
  for (let v = 0; v < n; v++) permutation[v] = v;
  const work: SplitWork = {
    part: new Int32Array(n),
    side: new Uint8Array(n),
    bin: new Uint16Array(n),
    local: new Uint32Array(n),
  };
  const spare = new Uint32Array(n);
  // Parts still to be ordered, as [low, high) in the permutation; the part's number is its low end.
  const parts: number[] = [0, n];
  while (parts.length > 0) {
    const high = parts.pop() as number;
    const low = parts.pop() as number;
    const vertices = permutation.subarray(low, high);
    if (high - low <= LEAF) {
      orderLeaf(graph, vertices, low, work);
      continue;
    }
    split(graph, x, y, vertices, work);
    const [before, after] = arrange(vertices, work.side, spare);
    for (let i = before; i < before + after; i++) work.part[vertices[i]] = low + before;
    for (let i = before + after; i < vertices.length; i++) work.part[vertices[i]] = -1;
    if (before > 0) parts.push(low, low + before);
    if (after > 0) parts.push(low + before, low + before + after);
  }
  return permutation;
}

/** Stable: vertices before, after, between; returns the first two counts. */
function arrange(vertices: Uint32Array, side: Uint8Array, spare: Uint32Array): [number, number] {
  let before = 0;
  let rest = 0;
  for (let i = 0; i < vertices.length; i++) {
    const v = vertices[i];
    if (side[v] === BEFORE) vertices[before++] = v;
    else spare[rest++] = v;
  }
  let after = before;
  let between = 0;
  for (let i = 0; i < rest; i++) {
    const v = spare[i];
    if (side[v] === AFTER) vertices[after++] = v;
    else spare[between++] = v;
  }
  for (let i = 0; i < between; i++) vertices[after + i] = spare[i];
  return [before, after - before];
}

/** Minimum degree within a part, with its neighbours in the separators around it as the halo. */
function orderLeaf(graph: Graph, vertices: Uint32Array, part: number, work: SplitWork): void {
  const { start, neighbour } = graph;
  const inner = vertices.length;
  const { local, part: partOf } = work;
  const halo: number[] = [];
  for (let i = 0; i < inner; i++) local[vertices[i]] = i;
  const haloAt = new Map<number, number>();
  for (let i = 0; i < inner; i++)
    for (let e = start[vertices[i]]; e < start[vertices[i] + 1]; e++) {
      const u = neighbour[e];
      if (partOf[u] === part || haloAt.has(u)) continue;
      haloAt.set(u, inner + halo.length);
      halo.push(u);
    }
  const words = (inner + halo.length + 31) >>> 5;
  const adjacency = new Uint32Array(inner * words);
  for (let i = 0; i < inner; i++)
    for (let e = start[vertices[i]]; e < start[vertices[i] + 1]; e++) {
      const u = neighbour[e];
      const j = partOf[u] === part ? local[u] : (haloAt.get(u) as number);
      adjacency[i * words + (j >>> 5)] |= 1 << (j & 31);
    }
  const sequence = new Uint32Array(inner);
  minimumDegree(inner, words, adjacency, sequence);
  const ordered = sequence.map((i) => vertices[i]);
  vertices.set(ordered);
}
