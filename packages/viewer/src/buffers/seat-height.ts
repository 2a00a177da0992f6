import type { HeadModel, Point, Shape } from '@flathead/solver';
import { insideRing } from '@flathead/solver';
import { displayRing } from './display-ring.ts';

/** Height over the middle of the body of the uppermost face at a point, mm: where a screw head sits. */
export function seatHeight({ body, frame }: Pick<HeadModel, 'body' | 'frame'>, at: Point): number {
  const half = body.thickness / 2;
  if (frame === undefined) return half;
  const onBody = covers(body.outline, at);
  if (onBody && frame.side === 'board') return half;
  const onFrame = covers(frame.outer, at) && !covers(frame.window, at);
  if (!onFrame) return half;
  const { side, thickness } = frame;
  if (side === 'level') return onBody ? half + thickness / 2 : thickness / 2;
  return side === 'device' ? half + thickness : -half;
}

/** Height of the board under the head, mm: the lowest face of body and frame. */
export function boardHeight({ body, frame }: HeadModel): number {
  const half = body.thickness / 2;
  if (frame === undefined || frame.side === 'device') return -half;
  return -half - (frame.side === 'board' ? frame.thickness : frame.thickness / 2);
}

function covers(shape: Shape, [x, y]: Point): boolean {
  const ring = displayRing(shape);
  return ring !== null && insideRing(ring, x, y);
}
