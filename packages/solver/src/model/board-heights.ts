import { Matrix, pseudoInverse } from 'ml-matrix';
import type { Point } from '../geometry/point.ts';
import type { Fastener, HeadModel } from './head-model.ts';
import type { PlacedSeat } from './seats.ts';

/** Heights of seats above the board's own plane, mm. */
export interface SeatHeights {
  /** In the order of the model. */
  readonly fasteners: readonly number[];
  /** Of the cells of all seats, in their order. */
  readonly cells: readonly number[];
}

/** Heights below this, mm, are rounding. */
const NOTHING = 1e-12;

/**
 * Heights of the seats counted from the least-squares plane through those of the fasteners: a board that is tilted or
 * raised as a whole bends nothing and takes its probes' pads along, so that deflections are counted from that plane.
 */
export function seatHeights({ fasteners, seats: pads = [] }: HeadModel, seats: readonly PlacedSeat[]): SeatHeights {
  const above = planeAbove(fasteners);
  return {
    fasteners: fasteners.map(({ at, height = 0 }) => above(at, height)),
    cells: seats.flatMap((seat, i) => seat.cells.map(() => above(centreOf(seat), pads[i].height ?? 0))),
  };
}

/** What to know of a head on an uneven board: one sentence, or none. */
export function heightRemarks({ fasteners }: HeadModel): string[] {
  const above = planeAbove(fasteners);
  const most = Math.max(0, ...fasteners.map(({ at, height = 0 }) => Math.abs(above(at, height))));
  if (most === 0) return [];
  return [
    `The seats of the fasteners lie up to ${(1000 * most).toFixed(1)} um off their own least-squares plane. Deflections and contact forces count from that plane, in which the board under the probes is taken to lie.`,
  ];
}

/** Height of a place above the plane through all fasteners; zero everywhere where they are level. */
function planeAbove(fasteners: readonly Fastener[]): (at: Point, height: number) => number {
  if (fasteners.every(({ height = 0 }) => height === 0)) return (_, height) => height;
  const places = new Matrix(fasteners.map(({ at: [x, y] }) => [1, x, y]));
  const plane = pseudoInverse(places).mmul(Matrix.columnVector(fasteners.map(({ height = 0 }) => height)));
  const [a, bx, by] = plane.to1DArray();
  return ([x, y], height) => {
    const above = height - a - bx * x - by * y;
    return Math.abs(above) < NOTHING ? 0 : above;
  };
}

/** Centre of area of a seat, where its height counts; it is as level as the board's plane. */
function centreOf({ cells }: PlacedSeat): Point {
  const whole = cells.reduce((sum, { area }) => sum + area, 0);
  const mean = (axis: 0 | 1) => cells.reduce((sum, { at, area }) => sum + at[axis] * area, 0) / whole;
  return [mean(0), mean(1)];
}
