import type { Point, Ring } from '../geometry/point.ts';

/** Turns of less than this, degrees, are chords of a curve rather than corners. */
const SMOOTH = 15;
/** Element size over the base size falls by this factor for each unit by which the moments are singular. */
const GRADING = 22_000;

/** A corner and how small the elements there should be. */
export interface GradedCorner {
  readonly at: Point;
  readonly size: number;
}

/**
 * Corners where moments of a simply supported plate grow without bound, with graded element sizes.
 *
 * Near a corner of interior angle alpha the deflection holds a term `r^(pi/alpha)`, so that moments go with
 * `r^(pi/alpha - 2)`: unbounded above 90 degrees (Williams 1951; Morley 1963 for the rhombus). Without grading the error
 * of w falls with `h^(2 pi/alpha - 2)` only: 8 % is left at the centre of a 30 degree rhombus that takes 16,000 dofs.
 *
 * @param ring counter-clockwise outline, or clockwise opening: the plate lies on its left
 */
export function singularCorners(ring: Ring, base: number): GradedCorner[] {
  return ring.flatMap((corner, i) => {
    const interior = interiorAngle(ring[(i + ring.length - 1) % ring.length], corner, ring[(i + 1) % ring.length]);
    const singular = 2 - 180 / interior;
    if (singular <= 0 || Math.abs(interior - 180) < SMOOTH) return [];
    return [{ at: corner, size: base * GRADING ** -Math.min(singular, 0.8) }];
  });
}

/** Angle on the left of the path a, b, c at b, degrees, 0 to 360. */
function interiorAngle([xa, ya]: Point, [xb, yb]: Point, [xc, yc]: Point): number {
  const turn = Math.atan2((xb - xa) * (yc - yb) - (yb - ya) * (xc - xb), (xb - xa) * (xc - xb) + (yb - ya) * (yc - yb));
  return 180 - (turn * 180) / Math.PI;
}
