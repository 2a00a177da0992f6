import type { Point } from '../geometry/point.ts';
import { type Locator, locate, trianglesIn } from '../mesh/locate.ts';
import type { Mesh } from '../mesh/mesh.ts';

/** Part of a segment inside one triangle. */
export interface SegmentPiece {
  readonly triangle: number;
  readonly a: Point;
  readonly b: Point;
}

/** Shortest piece, relative to the segment, that is more than rounding. */
const SHORTEST = 1e-13;

/**
 * Cuts a segment where it enters and leaves triangles. A piece along a side shared by two triangles is in one of them;
 * pieces off the plate are left out.
 */
export function segmentPieces(mesh: Mesh, locator: Locator, from: Point, to: Point): SegmentPiece[] {
  const { x, y, triangles } = mesh;
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const cuts: number[] = [0, 1];
  const box = [Math.min(from[0], to[0]), Math.min(from[1], to[1]), Math.max(from[0], to[0]), Math.max(from[1], to[1])];
  for (const t of trianglesIn(locator, box[0], box[1], box[2], box[3])) {
    // Part s in [enter, leave] of the segment to the left of all three sides. A side that the segment runs along does
    // not cut it, on whichever side of it rounding puts the segment.
    let [enter, leave] = [0, 1];
    for (let k = 0; k < 3 && enter <= leave; k++) {
      const [i, j] = [triangles[3 * t + k], triangles[3 * t + ((k + 1) % 3)]];
      const [sx, sy] = [x[j] - x[i], y[j] - y[i]];
      const at = sx * (from[1] - y[i]) - sy * (from[0] - x[i]);
      const rate = sx * dy - sy * dx;
      const near = locator.tolerance * Math.hypot(sx, sy);
      if (Math.abs(rate) <= near) {
        if (at < -near) leave = -1;
      } else if (rate > 0) enter = Math.max(enter, -at / rate);
      else leave = Math.min(leave, -at / rate);
    }
    if (enter < leave) cuts.push(enter, leave);
  }
  cuts.sort((a, b) => a - b);
  const pieces: SegmentPiece[] = [];
  const point = (s: number): Point => [from[0] + s * dx, from[1] + s * dy];
  for (let c = 1; c < cuts.length; c++) {
    if (cuts[c] - cuts[c - 1] < SHORTEST) continue;
    const [mx, my] = point((cuts[c - 1] + cuts[c]) / 2);
    const triangle = locate(locator, mx, my);
    if (triangle >= 0) pieces.push({ triangle, a: point(cuts[c - 1]), b: point(cuts[c]) });
  }
  return pieces;
}
