import { orientation } from './orientation.ts';
import type { Region, Ring } from './point.ts';

/**
 * Winding number of a ring about a point, or `undefined` when the point lies exactly on the ring.
 *
 * Crossing count with exact orientation tests (Sunday 2001), so a point is never on both or on no side of an edge.
 */
function winding(ring: Ring, x: number, y: number): number | undefined {
  let turns = 0;
  let [xa, ya] = ring[ring.length - 1];
  for (const [xb, yb] of ring) {
    if (ya <= y ? yb > y : yb <= y) {
      const side = orientation(xa, ya, xb, yb, x, y);
      if (side === 0) return undefined;
      if (yb > ya && side > 0) turns++;
      if (yb < ya && side < 0) turns--;
    } else if (ya === y && yb === y ? (x - xa) * (x - xb) <= 0 : x === xb && y === yb) return undefined;
    xa = xb;
    ya = yb;
  }
  return turns;
}

/** Whether the point lies inside the ring (either sense) or exactly on it. */
export function insideRing(ring: Ring, x: number, y: number): boolean {
  return winding(ring, x, y) !== 0;
}

/** Whether the point lies inside the region or exactly on its boundary. */
export function insideRegion(region: Region, x: number, y: number): boolean {
  let turns = 0;
  for (const ring of region) {
    const own = winding(ring, x, y);
    if (own === undefined) return true;
    turns += own;
  }
  return turns !== 0;
}

/** Distance from a point to the segment a-b. */
function distanceToSegment(x: number, y: number, xa: number, ya: number, xb: number, yb: number): number {
  const [dx, dy] = [xb - xa, yb - ya];
  const along = ((x - xa) * dx + (y - ya) * dy) / (dx * dx + dy * dy);
  const t = along > 0 ? Math.min(along, 1) : 0;
  return Math.hypot(x - xa - t * dx, y - ya - t * dy);
}

/** Distance from a point to the nearest edge of the ring, mm; not negative inside. */
export function distanceToRing(ring: Ring, x: number, y: number): number {
  let least = Infinity;
  let [xa, ya] = ring[ring.length - 1];
  for (const [xb, yb] of ring) {
    least = Math.min(least, distanceToSegment(x, y, xa, ya, xb, yb));
    xa = xb;
    ya = yb;
  }
  return least;
}
