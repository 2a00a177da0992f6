import type { HeadModel, Point, Ring } from '@flathead/solver';
import { distanceToRing, insideRing } from '@flathead/solver';
import { displayRing } from '../buffers/display-ring.ts';

/** Where a fastener may sit: outlines of the body and of the frame. */
export function planOutlines({ body, frame }: HeadModel): readonly Ring[] {
  const shapes = frame ? [body.outline, frame.outer] : [body.outline];
  return shapes.map(displayRing).filter((ring) => ring !== null);
}

/**
 * The point itself where it lies at least `inset` within one of the rings, else the nearest place that does, found by
 * pulling it towards the centre of the nearest ring.
 */
export function clampInside(rings: readonly Ring[], point: Point, inset: number): Point {
  const fits = ([x, y]: Point): boolean =>
    rings.some((ring) => insideRing(ring, x, y) && distanceToRing(ring, x, y) >= inset - 1e-9);
  if (rings.length === 0 || fits(point)) return point;
  let best: Point | null = null;
  let least = Infinity;
  for (const ring of rings)
    for (const candidate of insetFeet(ring, point, inset)) {
      const distance = Math.hypot(candidate[0] - point[0], candidate[1] - point[1]);
      if (distance >= least || !fits(candidate)) continue;
      best = candidate;
      least = distance;
    }
  return best ?? point;
}

/** Feet of the point on the edges of a counter-clockwise ring moved inwards, and the corners of that inset ring. */
function insetFeet(ring: Ring, [px, py]: Point, inset: number): Point[] {
  const feet: Point[] = [];
  const n = ring.length;
  for (let i = 0; i < n; i++) {
    const [xa, ya] = ring[i];
    const [xb, yb] = ring[(i + 1) % n];
    const length = Math.hypot(xb - xa, yb - ya);
    const [tx, ty] = [(xb - xa) / length, (yb - ya) / length];
    const along = Math.min(length, Math.max(0, (px - xa) * tx + (py - ya) * ty));
    feet.push([xa + along * tx - inset * ty, ya + along * ty + inset * tx]);
    const [xc, yc] = ring[(i + 2) % n];
    const next = Math.hypot(xc - xb, yc - yb);
    const [ux, uy] = [(xc - xb) / next, (yc - yb) / next];
    const turn = 1 + tx * ux + ty * uy;
    if (turn > 1e-6) feet.push([xb - (inset * (ty + uy)) / turn, yb + (inset * (tx + ux)) / turn]);
  }
  return feet;
}
