import { nextEdge, type Triangulation } from './triangulation.ts';

/** What refinement needs to know of one triangle. Reused from triangle to triangle. */
export interface TriangleShape {
  /** Squared lengths. */
  shortest2: number;
  longest2: number;
  /** Squared circumradius. */
  radius2: number;
  /** Half-edge that is the shortest edge. */
  shortestEdge: number;
  /** Where a node would improve the triangle, set by {@link placeOffCentre}. */
  x: number;
  y: number;
}

/** Measures triangle t. */
export function measure(shape: TriangleShape, { origin, x, y }: Triangulation, t: number): void {
  const a = origin[3 * t];
  const b = origin[3 * t + 1];
  const c = origin[3 * t + 2];
  const ab2 = (x[b] - x[a]) ** 2 + (y[b] - y[a]) ** 2;
  const bc2 = (x[c] - x[b]) ** 2 + (y[c] - y[b]) ** 2;
  const ca2 = (x[a] - x[c]) ** 2 + (y[a] - y[c]) ** 2;
  const twice = (x[b] - x[a]) * (y[c] - y[a]) - (x[c] - x[a]) * (y[b] - y[a]);
  shape.radius2 = (ab2 * bc2 * ca2) / (4 * twice * twice);
  shape.longest2 = Math.max(ab2, bc2, ca2);
  if (ab2 <= bc2 && ab2 <= ca2) {
    shape.shortest2 = ab2;
    shape.shortestEdge = 3 * t;
  } else if (bc2 <= ca2) {
    shape.shortest2 = bc2;
    shape.shortestEdge = 3 * t + 1;
  } else {
    shape.shortest2 = ca2;
    shape.shortestEdge = 3 * t + 2;
  }
}

/**
 * Places the off-centre of a measured triangle (Üngör 2004): on the normal through the middle of its shortest edge,
 * from there towards the circumcentre and no further, where the new edges are `wanted` long or as thin as allowed.
 *
 * @param reach furthest distance from the shortest edge over its length
 */
export function placeOffCentre(
  shape: TriangleShape,
  { origin, x, y }: Triangulation,
  wanted: number,
  reach: number,
): void {
  const a = origin[shape.shortestEdge];
  const b = origin[nextEdge(shape.shortestEdge)];
  const c = origin[nextEdge(nextEdge(shape.shortestEdge))];
  const { shortest2 } = shape;
  const length = Math.sqrt(shortest2);
  const mx = (x[a] + x[b]) / 2;
  const my = (y[a] + y[b]) / 2;
  const tx = (x[b] - x[a]) / length;
  const ty = (y[b] - y[a]) / length;
  // The circumcentre (0, q) is as far from (length / 2, 0) as from the apex (s, h): s^2 + (h - q)^2 = length^2 / 4 + q^2.
  const s = (x[c] - mx) * tx + (y[c] - my) * ty;
  const h = (y[c] - my) * tx - (x[c] - mx) * ty;
  const q = (s * s + h * h - shortest2 / 4) / (2 * h);
  const side = Math.max(wanted, length);
  const away = Math.min(q, Math.sqrt(side * side - shortest2 / 4), reach * length);
  shape.x = mx - away * ty;
  shape.y = my + away * tx;
}
