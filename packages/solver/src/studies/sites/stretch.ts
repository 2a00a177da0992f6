import type { Point } from '../../geometry/point.ts';
import type { Shape } from '../../geometry/shape.ts';
import type { HeadModel } from '../../model/head-model.ts';

/** Half of the site area along x and y, mm. */
type Halves = Point;

/**
 * A head made to follow its site pattern: what lies beyond the sites keeps its distance to them, what lies between them
 * moves in proportion. Along each axis `x -> x h'/h` within the half-extent h of the old pattern, `x +- (h' - h)` beyond.
 *
 * Rectangles keep their corner radius. A round outline, window or opening about the middle of the pattern takes the larger
 * growth of the two axes; other circles keep their diameter and move.
 *
 * @param from half-extents of the pattern of the model
 * @param to half-extents of the pattern it shall follow
 */
export function stretched(model: HeadModel, from: Halves, to: Halves): HeadModel {
  const origin = model.sites.origin ?? [0, 0];
  const along = (axis: 0 | 1, value: number): number => {
    const x = value - origin[axis];
    const [h, next] = [from[axis], to[axis]];
    const moved = Math.abs(x) <= h ? (x * next) / h : x + Math.sign(x) * (next - h);
    return Number((origin[axis] + moved).toPrecision(12));
  };
  const point = ([x, y]: Point): [number, number] => [along(0, x), along(1, y)];
  const shape = (old: Shape): Shape => {
    if ('polygon' in old) return { polygon: old.polygon.map(point) };
    const [x, y] = old.centre ?? [0, 0];
    if ('circle' in old) {
      const growth = 2 * Math.max(to[0] - from[0], to[1] - from[1]);
      const isCentral = Math.hypot(x - origin[0], y - origin[1]) < old.circle / 2;
      return { ...old, circle: isCentral ? old.circle + growth : old.circle, centre: point([x, y]) };
    }
    const [width, height] = old.rectangle;
    const [left, right] = [along(0, x - width / 2), along(0, x + width / 2)];
    const [low, high] = [along(1, y - height / 2), along(1, y + height / 2)];
    return { ...old, rectangle: [right - left, high - low], centre: [(left + right) / 2, (low + high) / 2] };
  };
  const { body, frame, fasteners, seats, keepOuts } = model;
  return {
    ...model,
    body: { ...body, outline: shape(body.outline), ...(body.openings && { openings: body.openings.map(shape) }) },
    ...(frame && {
      frame: {
        ...frame,
        outer: shape(frame.outer),
        window: shape(frame.window),
        ...(frame.ribs && {
          ribs: frame.ribs.map((rib) =>
            'between' in rib ? rib : { ...rib, from: point(rib.from), to: point(rib.to) },
          ),
        }),
      },
    }),
    fasteners: fasteners.map((fastener) => ({ ...fastener, at: point(fastener.at) })),
    ...(seats && {
      seats: seats.map((seat) =>
        'shape' in seat ? { ...seat, shape: shape(seat.shape) } : { ...seat, at: point(seat.at) },
      ),
    }),
    ...(keepOuts && { keepOuts: keepOuts.map((area) => ({ ...area, shape: shape(area.shape) })) }),
  };
}
