import type { HeadModel, Point, Shape } from '@flathead/solver';
import { onGrid, pointOnGrid } from './grid.ts';
import { LEAVE_LINE, linkedSigns, type MirrorAxes, mirrored, type Signs } from './mirror.ts';
import type { StageEdit } from './stage-move.ts';

/** Shapes this close to a mirrored one are partners, mm. */
const PARTNER = 0.5;
const SMALLEST = 0.2;

/** Middle of a shape: of a polygon, that of its corners. */
export function shapeMiddle(shape: Shape): Point {
  if (!('polygon' in shape)) return shape.centre ?? [0, 0];
  const mean = (axis: 0 | 1) => shape.polygon.reduce((sum, corner) => sum + corner[axis], 0) / shape.polygon.length;
  return [mean(0), mean(1)];
}

/** Points by which a shape is resized: corners counter-clockwise from the lower left, or the rim of a circle at +x. */
export function shapeCorners(shape: Shape): Point[] {
  if ('polygon' in shape) return shape.polygon.map(([x, y]): Point => [x, y]);
  const [x, y] = shapeMiddle(shape);
  if ('circle' in shape) return [[x + shape.circle / 2, y]];
  const [w, h] = [shape.rectangle[0] / 2, shape.rectangle[1] / 2];
  return [
    [x - w, y - h],
    [x + w, y - h],
    [x + w, y + h],
    [x - w, y + h],
  ];
}

/** Pulls a keep-out by its middle, or by a corner with the opposite one held; with those opposite where linked. */
export function keepOutEdit(
  start: HeadModel,
  index: number,
  corner: number | null,
  axes: MirrorAxes | null,
): StageEdit {
  const keepOuts = start.keepOuts ?? [];
  const shape = keepOuts[index]?.shape;
  if (shape === undefined) return (now) => now;
  const centre: Point = start.sites.origin ?? [0, 0];
  const partners: { index: number; signs: Signs }[] = [];
  /** Axes along which the shape is its own image and stays it, unless pulled well off as a whole. */
  const own: [boolean, boolean] = [false, false];
  for (const signs of linkedSigns(axes)) {
    const image = mirroredShape(shape, signs, centre);
    keepOuts.forEach((other, i) => {
      if (!alike(image, other.shape)) return;
      if (i !== index) {
        if (partners.every((partner) => partner.index !== i)) partners.push({ index: i, signs });
      } else if (signs[0] * signs[1] < 0) own[signs[0] < 0 ? 0 : 1] = true;
    });
  }
  return (now, point, grid) => {
    const next =
      corner === null ? movedTo(shape, point, grid, own) : resized(shape, corner, pointOnGrid(point, grid), own);
    const shapes = new Map([[index, next]]);
    for (const partner of partners) shapes.set(partner.index, mirroredShape(next, partner.signs, centre));
    let changed = false;
    const edited = (now.keepOuts ?? []).map((keepOut, i) => {
      const wanted = shapes.get(i);
      if (wanted === undefined || JSON.stringify(wanted) === JSON.stringify(keepOut.shape)) return keepOut;
      changed = true;
      return { ...keepOut, shape: wanted };
    });
    return changed ? { ...now, keepOuts: edited } : now;
  };
}

function movedTo(shape: Shape, point: Point, grid: number, own: readonly [boolean, boolean]): Shape {
  const from = shapeMiddle(shape);
  const [x, y] = pointOnGrid(point, grid);
  const stays = (axis: 0 | 1): boolean => own[axis] && Math.abs(point[axis] - from[axis]) < LEAVE_LINE;
  const to: [number, number] = [stays(0) ? from[0] : x, stays(1) ? from[1] : y];
  if (!('polygon' in shape)) return { ...shape, centre: to };
  const polygon = shape.polygon.map((p) => pointOnGrid([p[0] + to[0] - from[0], p[1] + to[1] - from[1]], 0));
  return { polygon };
}

function resized(shape: Shape, corner: number, point: Point, own: readonly [boolean, boolean]): Shape {
  if ('polygon' in shape)
    return { polygon: shape.polygon.map((p, i): [number, number] => (i === corner ? [point[0], point[1]] : p)) };
  const middle = shapeMiddle(shape);
  if ('circle' in shape) {
    const radius = Math.hypot(point[0] - middle[0], point[1] - middle[1]);
    return { ...shape, circle: Math.max(SMALLEST, onGrid(2 * radius, 0)) };
  }
  const opposite = shapeCorners(shape)[(corner + 2) % 4];
  const spans = ([0, 1] as const).map((axis) => {
    if (own[axis]) return { size: 2 * Math.abs(point[axis] - middle[axis]), middle: middle[axis] };
    const size = Math.abs(point[axis] - opposite[axis]);
    return { size, middle: (point[axis] + opposite[axis]) / 2 };
  });
  const size = (axis: 0 | 1): number => Math.max(SMALLEST, onGrid(spans[axis].size, 0));
  const rectangle: [number, number] = [size(0), size(1)];
  const { corner: radius } = shape;
  return {
    ...shape,
    rectangle,
    centre: pointOnGrid([spans[0].middle, spans[1].middle], 0),
    ...(radius === undefined ? {} : { corner: Math.min(radius, rectangle[0] / 2, rectangle[1] / 2) }),
  };
}

function mirroredShape(shape: Shape, signs: Signs, centre: Point): Shape {
  const image = (point: Point): [number, number] => pointOnGrid(mirrored(point, signs, centre), 0);
  return 'polygon' in shape
    ? { polygon: shape.polygon.map(image) }
    : { ...shape, centre: image(shape.centre ?? [0, 0]) };
}

function alike(a: Shape, b: Shape): boolean {
  if ('rectangle' in a !== 'rectangle' in b || 'circle' in a !== 'circle' in b) return false;
  const [ca, cb] = [shapeCorners(a), shapeCorners(b)];
  const near = (p: Point, q: Point): boolean => Math.hypot(p[0] - q[0], p[1] - q[1]) <= PARTNER;
  return ca.length === cb.length && near(shapeMiddle(a), shapeMiddle(b)) && ca.every((p) => cb.some((q) => near(p, q)));
}
