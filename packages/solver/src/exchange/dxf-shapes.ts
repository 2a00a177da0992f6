import { arcVertices, circleVertices, type Vertex } from './curve.ts';
import { type DxfRecord, numberIn, numbersIn, toNumber } from './dxf-records.ts';
import { flattened, flattenedSpline } from './flatten.ts';

/** What an entity draws, in its own coordinates. */
export interface Drawn {
  readonly vertices: readonly Vertex[];
  readonly closed: boolean;
}

/** What an entity draws, or the reason why nothing can be made of it. */
export type Shaped = Drawn | string;

/** Vertices nearer than this share of their coordinates are one. */
const SAME = 1e-11;
const RADIANS = Math.PI / 180;

/** Entities that draw a curve, by name. `tolerance` is in the units of the drawing. */
export const SHAPES: Readonly<Record<string, (record: DxfRecord, tolerance: number) => Shaped>> = {
  LINE: lineShape,
  ARC: arcShape,
  CIRCLE: circleShape,
  LWPOLYLINE: lightPolyline,
  ELLIPSE: ellipseShape,
  SPLINE: splineShape,
};

function lineShape(record: DxfRecord): Shaped {
  const [x0, y0, x1, y1] = [10, 20, 11, 21].map((code) => numberIn(record, code, 0));
  const [z0, z1] = [30, 31].map((code) => numberIn(record, code, 0));
  if (z0 !== z1) return `runs from z = ${z0} to ${z1}; flatten the drawing`;
  if (x0 === x1 && y0 === y1) return 'has no length; remove it';
  return {
    vertices: [
      { x: x0, y: y0, bulge: 0 },
      { x: x1, y: y1, bulge: 0 },
    ],
    closed: false,
  };
}

function arcShape(record: DxfRecord): Shaped {
  const [x, y, radius, from, to] = [10, 20, 40, 50, 51].map((code) => numberIn(record, code, 0));
  if (!(radius > 0)) return `has a radius of ${radius}; remove it`;
  const sweep = (((to - from) % 360) + 360) % 360;
  if (sweep < 1e-9) return 'has no length: it ends at the angle where it starts; draw a circle, or remove it';
  return { vertices: arcVertices(x, y, radius, from * RADIANS, sweep * RADIANS), closed: false };
}

function circleShape(record: DxfRecord): Shaped {
  const [x, y, radius] = [10, 20, 40].map((code) => numberIn(record, code, 0));
  if (!(radius > 0)) return `has a radius of ${radius}; remove it`;
  return { vertices: circleVertices(x, y, radius), closed: true };
}

function lightPolyline(record: DxfRecord): Shaped {
  const vertices: { x: number; y: number; bulge: number }[] = [];
  for (const group of record.groups) {
    const last = vertices[vertices.length - 1];
    if (group.code === 10) vertices.push({ x: toNumber(group), y: 0, bulge: 0 });
    else if (group.code === 20 && last !== undefined) last.y = toNumber(group);
    else if (group.code === 42 && last !== undefined) last.bulge = toNumber(group);
  }
  return polyline(vertices, (numberIn(record, 70, 0) & 1) === 1);
}

/** A polyline without its pieces of no length. */
export function polyline(vertices: readonly Vertex[], closed: boolean): Shaped {
  const far = (p: Vertex, q: Vertex | undefined) =>
    q === undefined || Math.hypot(p.x - q.x, p.y - q.y) > SAME * (Math.abs(p.x) + Math.abs(p.y));
  const kept = vertices.filter((vertex, i) => far(vertex, vertices[i + 1]));
  const meets = kept.length > 2 && !far(kept[kept.length - 1], kept[0]);
  if (meets) kept.pop();
  if (kept.length < 2) return 'has fewer than two different vertices; remove it';
  return { vertices: kept, closed: closed || meets };
}

function ellipseShape(record: DxfRecord, tolerance: number): Shaped {
  const [x, y, ax, ay, share] = [10, 20, 11, 21, 40].map((code) => numberIn(record, code, 0));
  const [from, to] = [numberIn(record, 41, 0), numberIn(record, 42, 2 * Math.PI)];
  if (!(Math.hypot(ax, ay) > 0 && share > 0)) return 'has no size; remove it';
  // The minor axis is the normal times the major one: seen from below it turns round.
  const ratio = numberIn(record, 230, 1) < 0 ? -share : share;
  const sweep = to - from > 0 ? to - from : to - from + 2 * Math.PI;
  const points = flattened(
    (t) => {
      const [c, s] = [Math.cos(t), Math.sin(t) * ratio];
      return [x + c * ax - s * ay, y + c * ay + s * ax];
    },
    from,
    from + sweep,
    tolerance,
  ).map(([px, py]) => ({ x: px, y: py, bulge: 0 }));
  const closed = Math.abs(sweep - 2 * Math.PI) < 1e-9;
  return { vertices: closed ? points.slice(0, -1) : points, closed };
}

function splineShape(record: DxfRecord, tolerance: number): Shaped {
  const [xs, ys, knots, given] = [10, 20, 40, 41].map((code) => numbersIn(record, code));
  const zs = numbersIn(record, 30);
  if (zs.some((z) => z !== zs[0])) return 'does not lie in one plane along x-y; flatten the drawing';
  const degree = numberIn(record, 71, 3);
  if (xs.length === 0)
    return 'is given by points it passes through only; export it with control points, or as a polyline';
  if (!Number.isInteger(degree) || degree < 1 || degree > 20) return `is of degree ${degree}; use 1 to 20`;
  const sound = xs.length === ys.length && knots.length === xs.length + degree + 1 && xs.length > degree;
  const ascending = knots.every((knot, i) => i === 0 || knot >= knots[i - 1]);
  if (!sound || !ascending || (given.length > 0 && given.length !== xs.length))
    return `has ${xs.length} control points, ${knots.length} knots and degree ${degree}, which do not fit; export it as a polyline`;
  const weights = given.length > 0 ? given : xs.map(() => 1);
  if (weights.some((weight) => !(weight > 0))) return 'has a weight that is not positive; export it as a polyline';
  const points = xs.map((x, i) => [x, ys[i]] as const);
  const corners = flattenedSpline({ degree, knots, points, weights }, tolerance);
  return polyline(
    corners.map(([x, y]) => ({ x, y, bulge: 0 })),
    (numberIn(record, 70, 0) & 1) === 1,
  );
}
