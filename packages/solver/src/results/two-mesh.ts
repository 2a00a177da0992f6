/** Order at which bow, flatness, deflection and reactions converge with the element size. */
const ORDER = 2;
/** The same of moments at an edge; inside they converge faster. */
export const MOMENT_ORDER = 1;

/** Safety factor where the order is not verified by a third mesh (Roache 1994, J. Fluids Eng. 116). */
const SAFETY = 3;

/** Ratio of element sizes of the two meshes. */
export const COARSENING = 1.7;

/**
 * Estimated error of a value from the same value on a mesh coarser by {@link COARSENING}:
 * `3 |v - v_coarse| / (r^order - 1)`. An estimate, not a bound.
 */
export function twoMeshError(value: number, coarse: number, order = ORDER): number {
  return (SAFETY * Math.abs(value - coarse)) / (COARSENING ** order - 1);
}

/**
 * Estimated error of a field from how far apart it is on the two meshes, `apart / (r^2 - 1)`: what a value read from it
 * is off by at least where {@link twoMeshError} says less, because errors of opposite sign meet in the difference of the
 * values. Without the safety factor, since the field as a whole does not pass through zero.
 */
export function fieldError(apart: number): number {
  return apart / (COARSENING ** ORDER - 1);
}
