import type { Point, Ring } from '../geometry/point.ts';
import type { SizeField } from '../mesh/size-field.ts';

/** Turns of less than this, degrees, are chords of a curve rather than corners. */
const SMOOTH = 15;
/** Element size over the base size falls by this factor for each unit by which the moments are singular. */
const GRADING = 22_000;
/** Distance from a corner, over the size of the elements there, up to which they are that large. */
const REACH = 2;

/** A corner where moments are singular. */
export interface SingularCorner {
  readonly at: Point;
  /** Size of the elements there over the base size. */
  readonly size: number;
  /** The error of w from there falls with this power of their size. */
  readonly order: number;
}

/**
 * Corners where moments of a simply supported plate grow without bound, with graded element sizes.
 *
 * Near a corner of interior angle alpha the deflection holds a term `r^(pi/alpha)`, so that moments go with
 * `r^(pi/alpha - 2)`: unbounded above 90 degrees (Williams 1951; Morley 1963 for the rhombus); where the corner
 * re-enters, the least term of finite energy is `r^(2 - pi/alpha)`. Without grading the error of w, that of the energy,
 * falls with `h^(2 pi/alpha - 2)` only: 8 % is left at the centre of a 30 degree rhombus that takes 16,000 dofs.
 *
 * @param ring counter-clockwise outline, or clockwise opening: the plate lies on its left
 */
export function singularCorners(ring: Ring): SingularCorner[] {
  return ring.flatMap((corner, i) => {
    const interior = interiorAngle(ring[(i + ring.length - 1) % ring.length], corner, ring[(i + 1) % ring.length]);
    const singular = 2 - 180 / interior;
    if (singular <= 0 || Math.abs(interior - 180) < SMOOTH) return [];
    const order = 2 * Math.abs(180 / interior - 1);
    return [{ at: corner, size: GRADING ** -Math.min(singular, 0.8), order }];
  });
}

/**
 * Sizes of a mesh coarser by a factor with its singular corners coarser by that power of it which makes their share of
 * the error grow as the rest does, with the square. Coarser by the factor alone, the difference of the two meshes would
 * say too little of them: a tenth at the obtuse corners of a 30 degree rhombus.
 *
 * @param size already coarser by the factor
 * @param most largest element, mm
 */
export function coarsenedCorners(
  size: SizeField,
  corners: readonly SingularCorner[],
  factor: number,
  most: number,
): SizeField {
  const least = corners.map(({ at: [x, y], order }) => {
    const own = Math.min(most, size(x, y) * factor ** (2 / order - 1));
    return { x, y, own };
  });
  if (least.length === 0) return size;
  return (x, y) =>
    least.reduce(
      (given, corner) => {
        const distance = Math.hypot(x - corner.x, y - corner.y);
        return distance < REACH * corner.own ? Math.max(given, corner.own) : given;
      },
      size(x, y),
    );
}

/** Angle on the left of the path a, b, c at b, degrees, 0 to 360. */
function interiorAngle([xa, ya]: Point, [xb, yb]: Point, [xc, yc]: Point): number {
  const turn = Math.atan2((xb - xa) * (yc - yb) - (yb - ya) * (xc - xb), (xb - xa) * (xc - xb) + (yb - ya) * (yc - yb));
  return 180 - (turn * 180) / Math.PI;
}
