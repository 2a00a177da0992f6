import { intersection } from './boolean.ts';
import type { Region, Ring } from './point.ts';
import { area, extent, perimeter, ringArea } from './region.ts';

/** Grid lines each way at most: a thin slanting shape is mostly empty in its box. */
const MOST = 24;
/** Cells narrower than this share of a full one, by 2A/P, are rounding. */
const NARROW = 1e-6;

/**
 * Cuts a region into about `count` cells, as square as its box allows; together they are the region.
 *
 * @param region of outer rings; holes are not seen
 * @returns simple counter-clockwise rings
 */
export function areaCells(region: Region, count: number): Ring[] {
  const { min, max } = extent(region);
  const side = Math.sqrt(area(region) / count);
  const steps = [0, 1].map((axis) => Math.min(MOST, Math.max(1, Math.round((max[axis] - min[axis]) / side))));
  const line = (axis: number, i: number) => min[axis] + ((max[axis] - min[axis]) * i) / steps[axis];
  const cells: Ring[] = [];
  for (let j = 0; j < steps[1]; j++)
    for (let i = 0; i < steps[0]; i++) {
      const [left, right] = [line(0, i), line(0, i + 1)];
      const [low, high] = [line(1, j), line(1, j + 1)];
      const box: Ring = [
        [left, low],
        [right, low],
        [right, high],
        [left, high],
      ];
      cells.push(...intersection([box], region));
    }
  return cells.filter((ring) => ringArea(ring) > 0 && (2 * ringArea(ring)) / perimeter(ring) > NARROW * side);
}
