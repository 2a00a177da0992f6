import type { Point, Ring } from './point.ts';
import type { Extent } from './region.ts';

/**
 * Part of a ring inside an axis-parallel box (Sutherland and Hodgman 1974), in the ring's sense.
 *
 * Separate parts of a concave ring come back joined along the sides of the box, there and back, so that areas and
 * windings inside the box are right all the same.
 *
 * @returns the ring itself when it lies in the box; no corner when it lies outside
 */
export function clipToBox(ring: Ring, { min, max }: Extent): Ring {
  const inside = ([x, y]: Point): boolean => x >= min[0] && x <= max[0] && y >= min[1] && y <= max[1];
  if (ring.every(inside)) return ring;
  let part = ring;
  for (const axis of [0, 1] as const) {
    part = clipToSide(part, axis, 1, min[axis]);
    part = clipToSide(part, axis, -1, max[axis]);
  }
  return part;
}

/** Part of a ring where `sense * (coordinate - limit)` is not negative. */
function clipToSide(ring: Ring, axis: 0 | 1, sense: 1 | -1, limit: number): Ring {
  return ring.flatMap((to, i): Point[] => {
    const from = ring[(i + ring.length - 1) % ring.length];
    const [before, after] = [sense * (from[axis] - limit), sense * (to[axis] - limit)];
    const kept = after >= 0 ? [to] : [];
    if (before * after >= 0) return kept;
    const t = before / (before - after);
    const other = from[1 - axis] + t * (to[1 - axis] - from[1 - axis]);
    return [axis === 0 ? [limit, other] : [other, limit], ...kept];
  });
}
