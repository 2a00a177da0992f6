import type { Point, Region, Ring } from './point.ts';

/** Axis-parallel box. */
export interface Extent {
  readonly min: Point;
  readonly max: Point;
}

/** Signed area of a ring, mm2: positive counter-clockwise. Shoelace sum about the first corner, so that a shift is harmless. */
export function ringArea(ring: Ring): number {
  const [x0, y0] = ring[0];
  let twice = 0;
  for (let i = 2; i < ring.length; i++) {
    const [xa, ya] = ring[i - 1];
    const [xb, yb] = ring[i];
    twice += (xa - x0) * (yb - y0) - (xb - x0) * (ya - y0);
  }
  return twice / 2;
}

/** Area of a region, mm2: outer rings count positive, holes negative. */
export function area(region: Region): number {
  return region.reduce((sum, ring) => sum + ringArea(ring), 0);
}

/** Centre of area of a region. Its area must not be zero. */
export function centroid(region: Region): Point {
  const [xr, yr] = region[0][0];
  let [twice, sx, sy] = [0, 0, 0];
  for (const ring of region)
    ring.forEach(([xa, ya], i) => {
      const [xb, yb] = ring[(i + 1) % ring.length];
      const cross = (xa - xr) * (yb - yr) - (xb - xr) * (ya - yr);
      twice += cross;
      sx += cross * (xa + xb - 2 * xr);
      sy += cross * (ya + yb - 2 * yr);
    });
  return [xr + sx / (3 * twice), yr + sy / (3 * twice)];
}

/** Length of a closed ring, mm. */
export function perimeter(ring: Ring): number {
  return ring.reduce((sum, [xa, ya], i) => {
    const [xb, yb] = ring[(i + 1) % ring.length];
    return sum + Math.hypot(xb - xa, yb - ya);
  }, 0);
}

/** Smallest axis-parallel box around a region. */
export function extent(region: Region): Extent {
  let [xmin, ymin, xmax, ymax] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const ring of region)
    for (const [x, y] of ring) {
      xmin = Math.min(xmin, x);
      ymin = Math.min(ymin, y);
      xmax = Math.max(xmax, x);
      ymax = Math.max(ymax, y);
    }
  return { min: [xmin, ymin], max: [xmax, ymax] };
}
