import { Fault } from '../fault/fault.ts';
import { circlePoints, quarterEdges, quarterPoints } from './arc.ts';
import type { Point, Ring } from './point.ts';
import { polygonRing } from './polygon.ts';
import type { Shape } from './shape.ts';

/** How finely arcs become edges. */
export interface RingOptions {
  /** Largest rise of an arc above its edge, mm. */
  readonly chord: number;
  /** Path of the shape in its model, for faults. */
  readonly path?: string;
}

/**
 * Counter-clockwise ring of a shape.
 *
 * Arcs become edges with their corners moved outwards a little, by less than `chord`, so that the enclosed area is that
 * of the true shape; the straight sides of a rounded rectangle stay where they are.
 *
 * @throws Fault BAD_SHAPE when the shape is self-crossing, touches itself, has no area, repeats a corner, or has a
 *   corner radius above half a side; `details` holds where, value, expected and remedy
 */
export function shapeRing(shape: Shape, { chord, path = '' }: RingOptions): Ring {
  if ('polygon' in shape) return polygonRing(shape.polygon, `${path}.polygon`.replace(/^\./, ''));
  const centre = shape.centre ?? [0, 0];
  if ('circle' in shape) {
    requireLength(shape.circle, 'diameter', path, centre);
    return circlePoints(centre, shape.circle / 2, quarterEdges(shape.circle / 2, chord));
  }
  const [width, height] = shape.rectangle;
  requireLength(width, 'width', path, centre);
  requireLength(height, 'height', path, centre);
  return rectangleRing(centre, width, height, shape.corner ?? 0, chord, path);
}

function rectangleRing(
  centre: Point,
  width: number,
  height: number,
  corner: number,
  chord: number,
  path: string,
): Ring {
  const [cx, cy] = centre;
  const most = Math.min(width, height) / 2;
  if (!(corner >= 0 && corner <= most * (1 + 1e-12)))
    throw new Fault(
      'BAD_SHAPE',
      `The corner radius of ${corner} mm does not fit a rectangle of ${width} x ${height} mm; use 0 to ${most} mm.`,
      path,
      {
        where: centre,
        value: corner,
        expected: `0 to ${most}`,
        remedy: 'reduce the corner radius or enlarge the sides',
      },
    );
  const [dx, dy] = [width / 2 - corner, height / 2 - corner];
  const inner: Point[] = [
    [cx + dx, cy + dy],
    [cx - dx, cy + dy],
    [cx - dx, cy - dy],
    [cx + dx, cy - dy],
  ];
  if (corner === 0) return inner;
  const quarter = quarterEdges(corner, chord);
  const arcs = inner.map((point, turn) => quarterPoints(point, corner, turn, quarter));
  // Where the radius is half a side the side has no length and the arcs share their end.
  const shortest = 1e-9 * most;
  return arcs.flatMap((arc, turn) => {
    const [xe, ye] = arc[quarter];
    const [xn, yn] = arcs[(turn + 1) % 4][0];
    return Math.hypot(xn - xe, yn - ye) > shortest ? arc : arc.slice(0, -1);
  });
}

function requireLength(value: number, name: string, path: string, where: Point): void {
  if (value > 0 && value < Infinity) return;
  throw new Fault('BAD_SHAPE', `The ${name} is ${value} mm; a shape needs a positive, finite one.`, path, {
    where,
    value,
    expected: 'a positive length in mm',
    remedy: `correct the ${name}`,
  });
}
