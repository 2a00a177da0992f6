import type { Fastener } from './head-model.ts';

/**
 * Fasteners on a rectangle about the origin: in its corners; six with one more in the middle of either long side, eight
 * in the middle of every side.
 *
 * @param half half width and half height of the rectangle, mm
 */
export function placedFasteners(count: 4 | 6 | 8, [x, y]: readonly [number, number], screw: string): Fastener[] {
  const corners = [
    ['NW', -x, y],
    ['NE', x, y],
    ['SW', -x, -y],
    ['SE', x, -y],
  ] as const;
  const northSouth = [
    ['N', 0, y],
    ['S', 0, -y],
  ] as const;
  const westEast = [
    ['W', -x, 0],
    ['E', x, 0],
  ] as const;
  const middles = count === 4 ? [] : count === 8 ? [...northSouth, ...westEast] : x >= y ? northSouth : westEast;
  return [...corners, ...middles].map(([name, fx, fy]) => ({ name, at: [fx, fy], screw }));
}
