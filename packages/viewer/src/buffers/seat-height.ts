import type { HeadModel, Point, Shape } from '@flathead/solver';
import { insideRing } from '../solver-extras.ts';
import { displayRing } from './display-ring.ts';

/** Height over the middle of the body of the uppermost face at a point, mm: where a screw head sits. */
export function seatHeight({ body, frame }: HeadModel, at: Point): number {
  const half = body.thickness / 2;
  if (frame === undefined) return half;
  const onBody = covers(body.outline, at);
  if (onBody && frame.side === 'board') return half;
  const onFrame = covers(frame.outer, at) && !covers(frame.window, at);
  if (!onFrame) return half;
  const top = { board: -half, device: half + frame.thickness, level: frame.thickness / 2 }[frame.side];
  return onBody ? Math.max(half, top) : top;
}

/** Height of the board under the head, mm: the lowest face of body and frame. */
export function boardHeight({ body, frame }: HeadModel): number {
  const half = body.thickness / 2;
  if (frame === undefined || frame.side === 'device') return -half;
  return frame.side === 'board' ? -half - frame.thickness : -Math.max(half, frame.thickness / 2);
}

function covers(shape: Shape, [x, y]: Point): boolean {
  const ring = displayRing(shape);
  return ring !== null && insideRing(ring, x, y);
}
