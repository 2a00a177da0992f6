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
  search: number;
}

export function emptyCavity(): Cavity {
  return {
    triangles: new Int32Array(64),
    count: 0,
    edges: new Int32Array(192),
    edgeCount: 0,
    taken: new Int32Array(0),
    search: 0,
  };
}

/**
 * Finds the triangles whose circumcircle holds the point (x, y), reached from `start` without crossing a segment
 * (Bowyer 1981, Watson 1981).
 *
 * @param start half-edge of a triangle that holds the point
 * @param split whether the point lies on `start`, a piece of a segment, which the cavity then spans
 * @returns false when the point does not see every edge of the cavity from the left, so that no star can fill it
 */
export function carve(
  mesh: Triangulation,
  cavity: Cavity,
  start: number,
  split: boolean,
  x: number,
  y: number,
): boolean {
  const { origin, twin, piece, x: xs, y: ys } = mesh;
  if (cavity.taken.length < mesh.region.length) {
    cavity.taken = new Int32Array(mesh.region.length);
    cavity.search = 0;
  }
  const { taken } = cavity;
  const stamp = ++cavity.search;
  let { triangles, edges } = cavity;
  const opposite = split ? twin[start] : -1;
  let count = 0;
  let edgeCount = 0;
  triangles[count++] = triangleOf(start);
  taken[triangleOf(start)] = stamp;
  if (opposite >= 0) {
    triangles[count++] = triangleOf(opposite);
    taken[triangleOf(opposite)] = stamp;
  }
  let seen = true;
  for (let i = 0; i < count; i++) {
    if (count + 3 > triangles.length) {
      triangles = grown(triangles);
      edges = grown(edges);
    }
    const e0 = 3 * triangles[i];
    for (let e = e0; e < e0 + 3; e++) {
      if (split && (e === start || e === opposite)) continue;
      const across = twin[e];
      if (across >= 0 && piece[e] < 0) {
        const t = triangleOf(across);
        if (taken[t] === stamp) continue;
        const a = origin[3 * t];
        const b = origin[3 * t + 1];
        const c = origin[3 * t + 2];
        if (incircle(xs[a], ys[a], xs[b], ys[b], xs[c], ys[c], x, y) > 0) {
          taken[t] = stamp;
          triangles[count++] = t;
          continue;
        }
      }
      edges[edgeCount++] = e;
      const a = origin[e];
      const b = origin[nextEdge(e)];
      // Negative is counter-clockwise: the predicate counts y downwards.
      if (orient2d(xs[a], ys[a], xs[b], ys[b], x, y) >= 0) seen = false;
    }
  }
  cavity.triangles = triangles;
  cavity.edges = edges;
  cavity.count = count;
  cavity.edgeCount = edgeCount;
  return seen;
}

function grown(array: Int32Array): Int32Array {
  const wide = new Int32Array(2 * array.length);
  wide.set(array);
  return wide;
}
