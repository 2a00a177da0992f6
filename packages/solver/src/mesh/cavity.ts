import { incircle, orient2d } from 'robust-predicates';
import { nextEdge, type Triangulation, triangleOf } from './triangulation.ts';

/** Triangles that a new node takes the place of, and the edges around them. Reused from node to node. */
export interface Cavity {
  triangles: Int32Array;
  count: number;
  /** Half-edges around the cavity, each with its triangle inside. */
  edges: Int32Array;
  edgeCount: number;
  /** `[triangles]` number of the search in which the triangle was taken. */
  taken: Int32Array;
  /** `[triangles]` number of the cavity that the triangle was refused by. */
  barred: Int32Array;
  search: number;
  cavity: number;
}

export function emptyCavity(): Cavity {
  return {
    triangles: new Int32Array(64),
    count: 0,
    edges: new Int32Array(192),
    edgeCount: 0,
    taken: new Int32Array(0),
    barred: new Int32Array(0),
    search: 0,
    cavity: 0,
  };
}

/**
 * Finds the triangles whose circumcircle holds the point (x, y), reached from `start` without crossing a segment
 * (Bowyer 1981, Watson 1981).
 *
 * Triangles that would turn over when joined to the point, by rounding or around the end of a segment, are left out.
 *
 * @param start half-edge of a triangle that holds the point
 * @param split whether the point lies on `start`, a piece of a segment, which the cavity then spans
 * @returns false when no valid cavity exists
 */
export function carve(
  mesh: Triangulation,
  cavity: Cavity,
  start: number,
  split: boolean,
  x: number,
  y: number,
): boolean {
  if (cavity.taken.length < mesh.region.length) {
    cavity.taken = new Int32Array(mesh.region.length);
    cavity.barred = new Int32Array(mesh.region.length);
    cavity.search = 0;
    cavity.cavity = 0;
  }
  cavity.cavity++;
  const first = triangleOf(start);
  const opposite = split ? mesh.twin[start] : -1;
  const second = opposite < 0 ? -1 : triangleOf(opposite);
  for (;;) {
    search(mesh, cavity, split ? start : -1, x, y, first, second);
    const folded = barFolded(mesh, cavity, x, y, first, second);
    if (folded <= 0) return folded === 0;
  }
}

function search(
  mesh: Triangulation,
  cavity: Cavity,
  splitEdge: number,
  x: number,
  y: number,
  first: number,
  second: number,
): void {
  const { origin, twin, piece, x: xs, y: ys } = mesh;
  const { taken, barred, cavity: own } = cavity;
  const stamp = ++cavity.search;
  const splitTwin = splitEdge < 0 ? -1 : twin[splitEdge];
  let { triangles, edges } = cavity;
  let count = 0;
  let edgeCount = 0;
  triangles[count++] = first;
  taken[first] = stamp;
  if (second >= 0) {
    triangles[count++] = second;
    taken[second] = stamp;
  }
  for (let i = 0; i < count; i++) {
    if (count + 3 > triangles.length) {
      triangles = grown(triangles);
      edges = grown(edges);
    }
    const e0 = 3 * triangles[i];
    for (let e = e0; e < e0 + 3; e++) {
      if (e === splitEdge || (splitTwin >= 0 && e === splitTwin)) continue;
      const across = twin[e];
      if (across >= 0 && piece[e] < 0) {
        const t = triangleOf(across);
        if (taken[t] === stamp) continue;
        if (barred[t] !== own) {
          const [a, b, c] = [origin[3 * t], origin[3 * t + 1], origin[3 * t + 2]];
          if (incircle(xs[a], ys[a], xs[b], ys[b], xs[c], ys[c], x, y) > 0) {
            taken[t] = stamp;
            triangles[count++] = t;
            continue;
          }
        }
      }
      edges[edgeCount++] = e;
    }
  }
  cavity.triangles = triangles;
  cavity.edges = edges;
  cavity.count = count;
  cavity.edgeCount = edgeCount;
}

/** Bars triangles whose outer edge the point does not see from the left. Returns how many, or -1 if the first is one. */
function barFolded(mesh: Triangulation, cavity: Cavity, x: number, y: number, first: number, second: number): number {
  const { origin, x: xs, y: ys } = mesh;
  const { edges, edgeCount, barred } = cavity;
  let folded = 0;
  for (let i = 0; i < edgeCount; i++) {
    const a = origin[edges[i]];
    const b = origin[nextEdge(edges[i])];
    // Negative: counter-clockwise, as the predicate counts y downwards.
    if (orient2d(xs[a], ys[a], xs[b], ys[b], x, y) < 0) continue;
    const t = triangleOf(edges[i]);
    if (t === first || t === second) return -1;
    barred[t] = cavity.cavity;
    folded++;
  }
  return folded;
}

function grown(array: Int32Array): Int32Array {
  const wide = new Int32Array(2 * array.length);
  wide.set(array);
  return wide;
}
