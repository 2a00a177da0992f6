import type { Point } from '../geometry/point.ts';
import { type Locator, trianglesIn } from '../mesh/locate.ts';
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
 * what is off the plate is in none.
 */
export function segmentPieces(mesh: Mesh, locator: Locator, from: Point, to: Point): SegmentPiece[] {
  const inside: { triangle: number; enter: number; leave: number }[] = [];
  const [xMin, xMax] = [Math.min(from[0], to[0]), Math.max(from[0], to[0])];
  const [yMin, yMax] = [Math.min(from[1], to[1]), Math.max(from[1], to[1])];
  const near = locator.tolerance;
  for (const triangle of trianglesIn(locator, xMin - near, yMin - near, xMax + near, yMax + near)) {
    const { enter, leave } = stay(mesh, triangle, from, to, near);
    if (leave - enter > SHORTEST) inside.push({ triangle, enter, leave });
  }
  inside.sort((p, q) => p.enter - q.enter || p.triangle - q.triangle);

  const point = (s: number): Point => [from[0] + s * (to[0] - from[0]), from[1] + s * (to[1] - from[1])];
  const pieces: SegmentPiece[] = [];
  // Triangles share a part of the segment where it runs along their common side, and a trace of it where it runs
  // beside the boundary within the tolerance.
  let covered = 0;
  for (const { triangle, enter, leave } of inside) {
    if (leave - covered <= SHORTEST) continue;
    pieces.push({ triangle, a: point(Math.max(enter, covered)), b: point(leave) });
    covered = leave;
  }
  return pieces;
}

/**
 * The part `from + s (to - from)`, s from `enter` to `leave`, to the left of all three sides of a triangle. A side that
 * the segment runs along does not cut it, on whichever side of it rounding puts the segment.
 */
function stay(
  { x, y, triangles }: Mesh,
  t: number,
  from: Point,
  to: Point,
  tolerance: number,
): { enter: number; leave: number } {
  let [enter, leave] = [0, 1];
  for (let k = 0; k < 3; k++) {
    const [i, j] = [triangles[3 * t + k], triangles[3 * t + ((k + 1) % 3)]];
    const [sx, sy] = [x[j] - x[i], y[j] - y[i]];
    const at = sx * (from[1] - y[i]) - sy * (from[0] - x[i]);
    const rate = sx * (to[1] - from[1]) - sy * (to[0] - from[0]);
    const near = tolerance * Math.hypot(sx, sy);
    if (Math.abs(rate) <= near) {
      if (at < -near) return { enter: 0, leave: 0 };
    } else if (rate > 0) enter = Math.max(enter, -at / rate);
    else leave = Math.min(leave, -at / rate);
  }
  return { enter, leave };
}
