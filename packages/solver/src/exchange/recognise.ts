import type { Shape } from '../geometry/shape.ts';
import { arcOf, enclosed, straightened, type Vertex } from './curve.ts';
import { tidy } from './reading.ts';

/** Rounding of drawings, mm: what is this near to a circle or a rectangle is one. */
const NEAR = 2e-5;

/**
 * A closed curve as a shape: a circle, a rectangle along the axes with or without round corners, else a polygon whose
 * arcs have become chords within the tolerance.
 */
export function shapeOf(vertices: readonly Vertex[], tolerance: number): Shape {
  return circleOf(vertices) ?? rectangleOf(vertices) ?? polygonOf(vertices, tolerance);
}

function circleOf(vertices: readonly Vertex[]): Shape | null {
  if (vertices.some(({ bulge }) => bulge === 0)) return null;
  const arcs = vertices.map((vertex, i) => arcOf(vertex, vertices[(i + 1) % vertices.length]));
  const [{ cx, cy, radius }] = arcs;
  const one = arcs.every(
    (arc) => Math.hypot(arc.cx - cx, arc.cy - cy) <= NEAR && Math.abs(arc.radius - radius) <= NEAR,
  );
  const round = Math.abs(arcs.reduce((sum, { sweep }) => sum + sweep, 0));
  if (!one || Math.abs(round - 2 * Math.PI) > 1e-4) return null;
  const mean = (of: (arc: (typeof arcs)[number]) => number) =>
    arcs.reduce((sum, arc) => sum + of(arc), 0) / arcs.length;
  return {
    circle: tidy(2 * mean((arc) => arc.radius)),
    centre: [tidy(mean((arc) => arc.cx)), tidy(mean((arc) => arc.cy))],
  };
}

/** Corners of a box with round corners whose sides are drawn in pieces, at most. */
const MOST_BOX = 200;

/** All corners and mid-arcs on the edge of the rounded box around the curve, and its area: then it is that box. */
function rectangleOf(vertices: readonly Vertex[]): Shape | null {
  if (vertices.length > MOST_BOX) return null;
  const probes = [...vertices, ...straightened(vertices, true, NEAR * 10)];
  const [xs, ys] = [probes.map(({ x }) => x), probes.map(({ y }) => y)];
  const [x0, x1, y0, y1] = [least(xs), -least(xs.map((x) => -x)), least(ys), -least(ys.map((y) => -y))];
  const first = vertices.findIndex(({ bulge }) => bulge !== 0);
  const corner = first < 0 ? 0 : arcOf(vertices[first], vertices[(first + 1) % vertices.length]).radius;
  const [w, h, cx, cy] = [x1 - x0, y1 - y0, (x0 + x1) / 2, (y0 + y1) / 2];
  if (corner > Math.min(w, h) / 2 + NEAR) return null;
  const off = ({ x, y }: Vertex) => {
    const [dx, dy] = [Math.abs(x - cx) - w / 2 + corner, Math.abs(y - cy) - h / 2 + corner];
    return Math.hypot(Math.max(dx, 0), Math.max(dy, 0)) + Math.min(Math.max(dx, dy), 0) - corner;
  };
  if (probes.some((probe) => Math.abs(off(probe)) > 2 * NEAR)) return null;
  const area = w * h - (4 - Math.PI) * corner * corner;
  if (Math.abs(Math.abs(enclosed(vertices)) - area) > 4 * NEAR * (w + h)) return null;
  const shape = { rectangle: [tidy(w), tidy(h)] as [number, number], centre: [tidy(cx), tidy(cy)] as [number, number] };
  return corner === 0 ? shape : { ...shape, corner: tidy(Math.min(corner, w / 2, h / 2)) };
}

function least(values: readonly number[]): number {
  return values.reduce((a, b) => Math.min(a, b), Infinity);
}

/** Corners, without those on the straight line between their neighbours. */
function polygonOf(vertices: readonly Vertex[], tolerance: number): Shape {
  const corners = straightened(vertices, true, tolerance);
  const n = corners.length;
  const kept = corners.filter(({ x, y }, i) => {
    const [p, q] = [corners[(i + n - 1) % n], corners[(i + 1) % n]];
    const cross = (x - p.x) * (q.y - y) - (y - p.y) * (q.x - x);
    const along = (x - p.x) * (q.x - x) + (y - p.y) * (q.y - y);
    return Math.abs(cross) > 1e-9 * Math.hypot(q.x - p.x, q.y - p.y) || along < 0;
  });
  const list = kept.length >= 3 ? kept : corners;
  return { polygon: list.map(({ x, y }) => [tidy(x), tidy(y)]) };
}
