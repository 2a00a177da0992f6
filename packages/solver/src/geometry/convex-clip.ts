/** Numbers a buffer of {@link clipToTriangle} must hold for a polygon of `count` corners. */
export function clipCapacity(count: number): number {
  // A half-plane leaves at most 3/2 as many corners of any polygon; three of them at most 27/8.
  return 2 * (Math.ceil(3.375 * count) + 6);
}

/**
 * Part of a polygon inside a triangle (Sutherland and Hodgman 1974).
 *
 * A convex polygon comes back as it is; of a concave one separate parts come back joined along the triangle's sides,
 * there and back, so that areas and moments are right all the same. Allocates nothing.
 *
 * @param polygon `[2 * count]` x, y of each corner
 * @param corners `[6]` x, y of the triangle's corners, counter-clockwise
 * @param out `[clipCapacity(count)]` x, y of each corner of the part, in the polygon's sense
 * @param scratch another buffer like `out`
 * @returns number of corners in `out`; 0 when there is no overlap
 */
export function clipToTriangle(
  polygon: Float64Array,
  count: number,
  corners: Float64Array,
  out: Float64Array,
  scratch: Float64Array,
): number {
  const first = clipToLeft(polygon, count, corners[0], corners[1], corners[2], corners[3], out);
  const second = clipToLeft(out, first, corners[2], corners[3], corners[4], corners[5], scratch);
  return clipToLeft(scratch, second, corners[4], corners[5], corners[0], corners[1], out);
}

/** Part of a polygon to the left of the line a-b; returns its number of corners. */
function clipToLeft(
  from: Float64Array,
  count: number,
  ax: number,
  ay: number,
  bx: number,
  by: number,
  to: Float64Array,
): number {
  if (count === 0) return 0;
  const dx = bx - ax;
  const dy = by - ay;
  let xp = from[2 * count - 2];
  let yp = from[2 * count - 1];
  let sp = dx * (yp - ay) - dy * (xp - ax);
  let kept = 0;
  for (let i = 0; i < count; i++) {
    const x = from[2 * i];
    const y = from[2 * i + 1];
    const s = dx * (y - ay) - dy * (x - ax);
    if ((s > 0 && sp < 0) || (s < 0 && sp > 0)) {
      const t = sp / (sp - s);
      to[2 * kept] = xp + t * (x - xp);
      to[2 * kept + 1] = yp + t * (y - yp);
      kept++;
    }
    if (s >= 0) {
      to[2 * kept] = x;
      to[2 * kept + 1] = y;
      kept++;
    }
    xp = x;
    yp = y;
    sp = s;
  }
  return kept;
}
