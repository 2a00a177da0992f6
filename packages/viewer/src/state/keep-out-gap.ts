import { distanceToRing, type HeadModel, insideRing, type Point } from '@flathead/solver';
import { displayRing } from '../buffers/display-ring.ts';

export interface KeepOutGap {
  readonly name: string;
  /** From the edge of a screw head to the area, mm; negative where they overlap. */
  readonly gap: number;
  /** Whether it is less than the clearance asked for. */
  readonly short: boolean;
}

/** The keep-out nearest to a screw head of a diameter, mm. */
export function nearestKeepOut(keepOuts: HeadModel['keepOuts'], [x, y]: Point, head: number): KeepOutGap | null {
  let nearest: KeepOutGap | null = null;
  for (const { name, shape, clearance = 0 } of keepOuts ?? []) {
    const ring = displayRing(shape);
    if (ring === null) continue;
    const edge = distanceToRing(ring, x, y) * (insideRing(ring, x, y) ? -1 : 1);
    const gap = edge - head / 2;
    if (nearest === null || gap < nearest.gap) nearest = { name, gap, short: gap < clearance };
  }
  return nearest;
}
