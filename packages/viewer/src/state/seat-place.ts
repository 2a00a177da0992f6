import type { Point, Seat, Shape } from '@flathead/solver';

/** Outline and middle of a seat. */
export function seatPlace(seat: Seat): { readonly shape: Shape; readonly at: Point } {
  if ('at' in seat) return { shape: { circle: seat.diameter, centre: seat.at }, at: seat.at };
  const { shape } = seat;
  if (!('polygon' in shape)) return { shape, at: shape.centre ?? [0, 0] };
  const mean = (axis: 0 | 1) => shape.polygon.reduce((sum, corner) => sum + corner[axis], 0) / shape.polygon.length;
  return { shape, at: [mean(0), mean(1)] };
}
