import { clipCapacity, clipToTriangle } from '../geometry/convex-clip.ts';
import { distanceToRing, insideRing } from '../geometry/inside.ts';
import type { Ring } from '../geometry/point.ts';
import { centroid } from '../geometry/region.ts';
import { type Locator, trianglesIn } from '../mesh/locate.ts';
import type { Mesh } from '../mesh/mesh.ts';

/**
 * Visits every triangle of the mesh that a ring overlaps, with the part of the ring inside it.
 *
 * @param ring simple, either sense
 * @param visit gets the triangle and the part as x, y of `count` corners, counter-clockwise; valid during the call only
 */
export function eachOverlap(
  mesh: Mesh,
  locator: Locator,
  ring: Ring,
  visit: (triangle: number, polygon: Float64Array, count: number) => void,
): void {
  const polygon = counterClockwise(ring);
  const count = ring.length;
  const part = new Float64Array(clipCapacity(count));
  const scratch = new Float64Array(clipCapacity(count));
  const corners = new Float64Array(6);
  const { x, y, triangles } = mesh;
  let [xMin, yMin, xMax, yMax] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [px, py] of ring) {
    xMin = Math.min(xMin, px);
    xMax = Math.max(xMax, px);
    yMin = Math.min(yMin, py);
    yMax = Math.max(yMax, py);
  }
  const safe = safeDisc(ring);
  for (const t of trianglesIn(locator, xMin, yMin, xMax, yMax)) {
    let farthest2 = 0;
    for (let c = 0; c < 3; c++) {
      const px = x[triangles[3 * t + c]];
      const py = y[triangles[3 * t + c]];
      corners[2 * c] = px;
      corners[2 * c + 1] = py;
      farthest2 = Math.max(farthest2, (px - safe.x) ** 2 + (py - safe.y) ** 2);
    }
    if (farthest2 < safe.radius2) {
      visit(t, corners, 3);
      continue;
    }
    const kept = clipToTriangle(polygon, count, corners, part, scratch);
    if (kept > 2 && twiceSignedArea(part, kept) > 0) visit(t, part, kept);
  }
}

/** A disc about the ring's centroid that lies inside the ring, so that triangles in it need no clipping. */
function safeDisc(ring: Ring): { x: number; y: number; radius2: number } {
  const [x, y] = centroid([ring]);
  return { x, y, radius2: insideRing(ring, x, y) ? distanceToRing(ring, x, y) ** 2 : 0 };
}

/** The ring as x, y of each corner, counter-clockwise. */
function counterClockwise(ring: Ring): Float64Array {
  const polygon = cornersOf(ring);
  return twiceSignedArea(polygon, ring.length) >= 0 ? polygon : cornersOf([...ring].reverse());
}

function cornersOf(ring: Ring): Float64Array {
  const polygon = new Float64Array(2 * ring.length);
  ring.forEach(([x, y], c) => {
    polygon[2 * c] = x;
    polygon[2 * c + 1] = y;
  });
  return polygon;
}

function twiceSignedArea(polygon: Float64Array, count: number): number {
  let sum = 0;
  for (let c = 2; c < count; c++)
    sum +=
      (polygon[2 * c - 2] - polygon[0]) * (polygon[2 * c + 1] - polygon[1]) -
      (polygon[2 * c] - polygon[0]) * (polygon[2 * c - 1] - polygon[1]);
  return sum;
}
