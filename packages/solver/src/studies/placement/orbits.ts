import type { Point } from '../../geometry/point.ts';
import type { Mirror } from './plan.ts';
import type { Room } from './room.ts';

/** Positions that mirrors tie together: one, two or four of them. */
export interface Orbit {
  /** Candidates, by index. */
  readonly points: readonly number[];
  /** Position that the others are images of. */
  readonly at: Point;
  /** Least distance from the head of a fastener to a probe field, mm. */
  readonly siteGap: number;
}

/** Mirror images of a position, each once, itself first. A position on a mirror is its own image. */
export function images([x, y]: Point, mirror: Mirror, [cx, cy]: Point): Point[] {
  const flipX = mirror === 'x' || mirror === 'both' ? [x, rounded(2 * cx - x)] : [x];
  const flipY = mirror === 'y' || mirror === 'both' ? [y, rounded(2 * cy - y)] : [y];
  return [...new Set(flipX)].flatMap((px) => [...new Set(flipY)].map((py): Point => [px, py]));
}

/** Coordinates to a nanometre, so that images and grid lines meet exactly. */
export function rounded(coordinate: number): number {
  const value = Math.round(coordinate * 1e6) / 1e6;
  return value === 0 ? 0 : value;
}

/** Positions of a grid about a centre that the room allows, row by row. */
export function gridPoints({ extent: { min, max }, allows }: Room, step: number, [cx, cy]: Point): Point[] {
  const line = (axis: 0 | 1, centre: number) => {
    const [first, last] = [
      Math.ceil((min[axis] - centre) / step - 1e-9),
      Math.floor((max[axis] - centre) / step + 1e-9),
    ];
    return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => rounded(centre + (first + i) * step));
  };
  const xs = line(0, cx);
  return line(1, cy)
    .flatMap((y) => xs.map((x): Point => [x, y]))
    .filter(allows);
}

/**
 * Orbits of candidates under a mirror: those all of whose images are candidates, no two nearer than the spacing.
 *
 * @param siteGap of each candidate
 */
export function orbitsOf(
  points: readonly Point[],
  siteGap: readonly number[],
  mirror: Mirror,
  about: Point,
  spacing: number,
): Orbit[] {
  const index = new Map(points.map((point, i) => [point.join(), i]));
  return points.flatMap((at, i): Orbit[] => {
    const all = images(at, mirror, about).map((image) => index.get(image.join()) ?? -1);
    if (
      all.some((k) => k < i) ||
      !areApart(
        all.map((k) => points[k]),
        spacing,
      )
    )
      return [];
    return [{ points: all, at, siteGap: Math.min(...all.map((k) => siteGap[k])) }];
  });
}

/** Whether positions are that far apart, each from each. */
export function areApart(points: readonly Point[], spacing: number): boolean {
  return points.every(([x, y], i) =>
    points.slice(0, i).every(([px, py]) => Math.hypot(x - px, y - py) >= spacing - 1e-9),
  );
}
