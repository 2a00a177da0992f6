/** Shape and size of a triangle, and the point that would improve it. Reused from triangle to triangle. */
export interface Improvement {
  /** Squared length of the shortest edge. */
  shortest2: number;
  longest2: number;
  /** Squared circumradius. */
  radius2: number;
  /** Corner, 0 to 2, where the shortest edge starts. */
  shortestEdge: number;
}

/** Measures the triangle a, b, c, counter-clockwise. */
export function measure(
  into: Improvement,
  ax: number,
  ay: number,
  bx: number,
  by: number,
  cx: number,
  cy: number,
): void {
  const ab2 = (bx - ax) ** 2 + (by - ay) ** 2;
  const bc2 = (cx - bx) ** 2 + (cy - by) ** 2;
  const ca2 = (ax - cx) ** 2 + (ay - cy) ** 2;
  const twice = (bx - ax) * (cy - ay) - (cx - ax) * (by - ay);
  into.radius2 = (ab2 * bc2 * ca2) / (4 * twice * twice);
  into.longest2 = Math.max(ab2, bc2, ca2);
  if (ab2 <= bc2 && ab2 <= ca2) {
    into.shortest2 = ab2;
    into.shortestEdge = 0;
  } else if (bc2 <= ca2) {
    into.shortest2 = bc2;
    into.shortestEdge = 1;
  } else {
    into.shortest2 = ca2;
    into.shortestEdge = 2;
  }
}
