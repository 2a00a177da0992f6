import { orient2d } from 'robust-predicates';

/**
 * Twice the signed area of the triangle a, b, c: positive when counter-clockwise (y up), exactly zero when collinear.
 *
 * The sign is exact (Shewchuk 1997, adaptive precision); the predicate counts y downwards, hence the minus.
 */
export function orientation(ax: number, ay: number, bx: number, by: number, cx: number, cy: number): number {
  return -orient2d(ax, ay, bx, by, cx, cy);
}
