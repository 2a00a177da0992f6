import { Fault } from '../fault/fault.ts';

type XY = readonly [number, number];

/** Corners of one curve, at most. */
const MOST_CORNERS = 200_000;
/** Halvings of one piece, at most. */
const DEEPEST = 16;

/**
 * Corners on a smooth curve from parameter a to b, both included: pieces are halved until the curve is within the
 * tolerance of their chord at a quarter, a half and three quarters.
 */
export function flattened(curve: (t: number) => XY, a: number, b: number, tolerance: number): XY[] {
  const points: XY[] = [curve(a)];
  const halve = (t0: number, p0: XY, t1: number, p1: XY, depth: number): void => {
    const off = Math.max(...[0.25, 0.5, 0.75].map((s) => distance(curve(t0 + s * (t1 - t0)), p0, p1)));
    requireFewCorners(points.length);
    if (depth >= DEEPEST || (depth >= 2 && off <= tolerance)) {
      points.push(p1);
      return;
    }
    const middle = (t0 + t1) / 2;
    const p = curve(middle);
    halve(t0, p0, middle, p, depth + 1);
    halve(middle, p, t1, p1, depth + 1);
  };
  halve(a, points[0], b, curve(b), 0);
  return points;
}

/** @throws Fault TOO_LARGE when one curve comes to more corners than any drawing needs */
export function requireFewCorners(count: number): void {
  if (count <= MOST_CORNERS) return;
  throw new Fault(
    'TOO_LARGE',
    `A curve of the drawing needs more than ${MOST_CORNERS} chords. Check the unit, or allow a coarser tolerance.`,
  );
}

/** Distance of a point from a chord. */
function distance([x, y]: XY, [ax, ay]: XY, [bx, by]: XY): number {
  const [dx, dy] = [bx - ax, by - ay];
  const square = dx * dx + dy * dy;
  const s = square === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / square));
  return Math.hypot(x - ax - s * dx, y - ay - s * dy);
}

/** A spline as drawings have it. */
export interface Spline {
  readonly degree: number;
  /** One more than points and degree together, ascending. */
  readonly knots: readonly number[];
  readonly points: readonly XY[];
  /** One for each point; all alike where it is not rational. */
  readonly weights: readonly number[];
}

/** Corners on a rational B-spline, span by span (de Boor 1978, in homogeneous coordinates). */
export function flattenedSpline(spline: Spline, tolerance: number): XY[] {
  const { degree, knots, points } = spline;
  const spans: XY[] = [];
  for (let k = degree; k < points.length; k++) {
    if (!(knots[k + 1] > knots[k])) continue;
    const piece = flattened((t) => deBoor(spline, k, t), knots[k], knots[k + 1], tolerance);
    for (const point of spans.length === 0 ? piece : piece.slice(1)) spans.push(point);
    requireFewCorners(spans.length);
  }
  return spans;
}

function deBoor({ degree, knots, points, weights }: Spline, k: number, t: number): XY {
  const d = Array.from({ length: degree + 1 }, (_, j): [number, number, number] => {
    const i = j + k - degree;
    return [points[i][0] * weights[i], points[i][1] * weights[i], weights[i]];
  });
  for (let r = 1; r <= degree; r++)
    for (let j = degree; j >= r; j--) {
      const i = j + k - degree;
      const s = (t - knots[i]) / (knots[i + degree - r + 1] - knots[i]);
      d[j] = [0, 1, 2].map((c) => (1 - s) * d[j - 1][c] + s * d[j][c]) as [number, number, number];
    }
  const [x, y, w] = d[degree];
  return [x / w, y / w];
}

/** Cubic Bezier curve. */
export function bezier(p: XY, q: XY, r: XY, s: XY): (t: number) => XY {
  return (t) => {
    const u = 1 - t;
    const at = (c: 0 | 1) => u * u * u * p[c] + 3 * u * u * t * q[c] + 3 * u * t * t * r[c] + t * t * t * s[c];
    return [at(0), at(1)];
  };
}
