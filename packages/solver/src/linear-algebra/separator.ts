import type { Graph } from './graph.ts';
import { minimumVertexCover } from './vertex-cover.ts';

/** Side of a vertex after a split. */
export const BEFORE = 0;
export const AFTER = 1;
export const BETWEEN = 2;

/** Work arrays for splitting parts of one graph, each `[n]`. */
export interface SplitWork {
  /** Part that a vertex belongs to now; vertices of other parts are ignored. */
  readonly part: Int32Array;
  /** Result: {@link BEFORE}, {@link AFTER} or {@link BETWEEN}. */
  readonly side: Uint8Array;
  /** Interval of a vertex along the direction tried. */
  readonly bin: Uint16Array;
  /** Number of a vertex in the bipartite graph of cut edges. */
  readonly local: Uint32Array;
}

/** Cosines and sines of the directions tried. */
const DIRECTIONS = [0, 1, 2, 3].map((k) => [Math.cos((k * Math.PI) / 4), Math.sin((k * Math.PI) / 4)] as const);
const MAX_BINS = 256;
/** Smallest share of the vertices that either half may have. */
const LEAST_SHARE = 0.35;
/** How much a lopsided split must save in cut edges. */
const IMBALANCE_COST = 1.5;

/**
 * Splits a part of a graph that is drawn in the plane into two halves and a separator (George 1973; the geometric
 * bisection by straight lines). Every direction is tried at every interval boundary near the middle, by counting the
 * edges that cross it; the line with the fewest is taken, and the separator is the smallest set of vertices that
 * touches all its cut edges.
 *
 * @param vertices the part's vertices, all with the same `work.part`
 */
export function split(graph: Graph, x: Float64Array, y: Float64Array, vertices: Uint32Array, work: SplitWork): void {
  if (!bisect(graph, x, y, vertices, work)) bisectByIndex(vertices, work.side);
  cover(graph, vertices, work);
}

/** Marks each vertex as before or after the best line; false when no line splits the part. */
function bisect(graph: Graph, x: Float64Array, y: Float64Array, vertices: Uint32Array, work: SplitWork): boolean {
  const { start, neighbour } = graph;
  const { part, side, bin } = work;
  const n = vertices.length;
  const mine = part[vertices[0]];
  const bins = Math.min(MAX_BINS, n);
  const count = new Uint32Array(bins);
  const crossing = new Int32Array(bins);
  let best = Infinity;
  let bestDirection = -1;
  let bestBin = 0;

  for (let d = 0; d < DIRECTIONS.length; d++) {
    if (!fillBins(d, bins)) continue;
    count.fill(0);
    crossing.fill(0);
    for (let i = 0; i < n; i++) {
      const v = vertices[i];
      const b = bin[v];
      count[b]++;
      for (let e = start[v]; e < start[v + 1]; e++) {
        const u = neighbour[e];
        if (part[u] !== mine || bin[u] <= b) continue;
        crossing[b]++;
        crossing[bin[u]]--;
      }
    }
    let before = 0;
    let cut = 0;
    for (let b = 0; b < bins - 1; b++) {
      before += count[b];
      cut += crossing[b];
      const share = before / n;
      if (share < LEAST_SHARE || share > 1 - LEAST_SHARE) continue;
      const lopsided = 2 * share - 1;
      const cost = (cut + 0.5) * (1 + IMBALANCE_COST * lopsided * lopsided);
      if (cost >= best) continue;
      best = cost;
      bestDirection = d;
      bestBin = b;
    }
  }
  if (bestDirection < 0) return false;
  fillBins(bestDirection, bins);
  for (let i = 0; i < n; i++) side[vertices[i]] = bin[vertices[i]] <= bestBin ? BEFORE : AFTER;
  return true;

  function fillBins(direction: number, bins: number): boolean {
    const [c, s] = DIRECTIONS[direction];
    let low = Infinity;
    let high = -Infinity;
    for (let i = 0; i < n; i++) {
      const v = vertices[i];
      const t = c * x[v] + s * y[v];
      if (t < low) low = t;
      if (t > high) high = t;
    }
    const scale = bins / (high - low);
    if (!(scale < Infinity)) return false;
    for (let i = 0; i < n; i++) {
      const v = vertices[i];
      bin[v] = Math.min(bins - 1, Math.floor((c * x[v] + s * y[v] - low) * scale));
    }
    return true;
  }
}

/** For vertices that no line tells apart: the first half against the second. */
function bisectByIndex(vertices: Uint32Array, side: Uint8Array): void {
  for (let i = 0; i < vertices.length; i++) side[vertices[i]] = 2 * i < vertices.length ? BEFORE : AFTER;
}

/** Moves a minimum vertex cover of the cut edges into the separator. */
function cover(graph: Graph, vertices: Uint32Array, { part, side, local }: SplitWork): void {
  const { start, neighbour } = graph;
  const mine = part[vertices[0]];
  const left: number[] = [];
  const right: number[] = [];
  const to: number[] = [];
  const edges: number[] = [0];
  const unseen = 0xffffffff;
  for (let i = 0; i < vertices.length; i++) if (side[vertices[i]] === AFTER) local[vertices[i]] = unseen;
  for (let i = 0; i < vertices.length; i++) {
    const v = vertices[i];
    if (side[v] !== BEFORE) continue;
    for (let e = start[v]; e < start[v + 1]; e++) {
      const u = neighbour[e];
      if (part[u] !== mine || side[u] !== AFTER) continue;
      if (local[u] === unseen) local[u] = right.push(u) - 1;
      to.push(local[u]);
    }
    if (to.length === edges[edges.length - 1]) continue;
    left.push(v);
    edges.push(to.length);
  }
  const chosen = minimumVertexCover({
    nLeft: left.length,
    nRight: right.length,
    start: Uint32Array.from(edges),
    to: Uint32Array.from(to),
  });
  for (let i = 0; i < left.length; i++) if (chosen.left[i] === 1) side[left[i]] = BETWEEN;
  for (let i = 0; i < right.length; i++) if (chosen.right[i] === 1) side[right[i]] = BETWEEN;
}
