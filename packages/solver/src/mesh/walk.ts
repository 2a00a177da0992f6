import { orient2d } from 'robust-predicates';
import { nextEdge, type Triangulation, triangleOf } from './triangulation.ts';

/**
 * Walks from a triangle to the one that holds the point (x, y).
 *
 * @returns the triangle; or -1 - e when half-edge e, on a segment or the boundary, bars the way
 */
export function walk(mesh: Triangulation, from: number, x: number, y: number): number {
  const { origin, twin, piece, x: xs, y: ys } = mesh;
  let t = from;
  let entered = -1;
  // A walk that turns round on itself is possible in a constrained triangulation; it ends at the last wall it saw.
  for (let step = 0; step < mesh.triangles; step++) {
    let out = -1;
    let wall = -1;
    for (let e = 3 * t; e < 3 * t + 3; e++) {
      if (e === entered) continue;
      const a = origin[e];
      const b = origin[nextEdge(e)];
      if (orient2d(xs[a], ys[a], xs[b], ys[b], x, y) <= 0) continue;
      if (piece[e] >= 0 || twin[e] < 0) wall = e;
      else out = e;
    }
    if (out < 0) return wall < 0 ? t : -1 - wall;
    entered = twin[out];
    t = triangleOf(entered);
  }
  return from;
}
