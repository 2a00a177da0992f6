import { drawGraph } from './drawing.ts';
import type { Graph } from './graph.ts';
import { leafWork, orderLeaf } from './leaf-order.ts';
import { split, splitWork } from './separator.ts';
import { AFTER, BEFORE } from './vertex-cut.ts';

/** Parts up to this size are ordered by minimum degree. */
const LEAF = 48;

/**
 * Fill-reducing elimination order by nested dissection of the drawn graph (George 1973): split a part, number its
 * separator last, go on with the halves; small parts by minimum degree. Near-linear time, deterministic.
 *
 * @param x `[n]` coordinates in which the graph is drawn, any unit
 * @param y `[n]`
 * @returns `[n]` vertex eliminated k-th
 */
export function order(graph: Graph, x: Float64Array, y: Float64Array): Uint32Array {
  const n = graph.start.length - 1;
  const permutation = new Uint32Array(n);
  for (let v = 0; v < n; v++) permutation[v] = v;
  const drawing = drawGraph(graph, x, y);
  const work = splitWork(n, graph.neighbour.length);
  const leaf = leafWork(n, LEAF);
  const spare = new Uint32Array(n);
  // Parts still to be ordered, each as its first place in the permutation and the one past its last.
  const parts: [number, number][] = [[0, n]];
  for (let range = parts.pop(); range !== undefined; range = parts.pop()) {
    const [low, high] = range;
    const vertices = permutation.subarray(low, high);
    if (high - low <= LEAF) {
      orderLeaf(graph, vertices, leaf);
      continue;
    }
    split(drawing, vertices, work);
    const before = moveUp(vertices, 0, BEFORE, work.side, spare);
    const after = moveUp(vertices, before, AFTER, work.side, spare);
    for (let i = before; i < after; i++) drawing.part[vertices[i]] = low + before;
    for (let i = after; i < vertices.length; i++) drawing.part[vertices[i]] = -1;
    if (before > 0) parts.push([low, low + before]);
    if (after > before) parts.push([low + before, low + after]);
  }
  return permutation;
}

/** Moves the vertices of one side to the front of `vertices[from ..]`, stable; returns where they end. */
function moveUp(vertices: Uint32Array, from: number, which: number, side: Uint8Array, spare: Uint32Array): number {
  let end = from;
  let rest = 0;
  for (let i = from; i < vertices.length; i++) {
    const v = vertices[i];
    if (side[v] === which) vertices[end++] = v;
    else spare[rest++] = v;
  }
  for (let i = 0; i < rest; i++) vertices[end + i] = spare[i];
  return end;
}
