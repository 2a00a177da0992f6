import { membraneStrain } from './membrane-triangle.ts';
import { twiceArea } from './plate-kinematics.ts';
import { plateCurvature, plateStiffness } from './plate-triangle.ts';

/** Dofs of a triangle that bends and stretches: w, thetaX, thetaY at three corners, (none, u, v) at three corners and sides. */
export const COUPLED_DOFS = 27;

/** Scratch of one call. */
const K = new Float64Array(81);
const curvature = new Float64Array(27);
const membrane = new Float64Array(36);
const E = new Float64Array(3 * COUPLED_DOFS);
const N = new Float64Array(3 * COUPLED_DOFS);

/** Barycentric points of a rule of equal weights that is exact for quadratic integrands, as strains squared are. */
const POINTS = [
  [2 / 3, 1 / 6, 1 / 6],
  [1 / 6, 2 / 3, 1 / 6],
  [1 / 6, 1 / 6, 2 / 3],
] as const;

/**
 * Strain of the neutral surface at barycentric coordinates, `e + C k = E u`: that of the six-node membrane in the
 * reference plane and the curvature of the plate triangle times the height of the neutral surface.
 *
 * @param bending D about the neutral surface, which the curvature of a plate with shear depends on
 * @param shear `null` is rigid in shear, hence thin
 * @param offset C, `[3 * 3]`, mm
 * @param out `[3 * 27]` row-major
 */
export function neutralStrain(
  x: Float64Array,
  y: Float64Array,
  bending: Float64Array,
  shear: Float64Array | null,
  offset: Float64Array,
  l0: number,
  l1: number,
  l2: number,
  out: Float64Array,
): void {
  plateCurvature(x, y, bending, shear, l0, l1, l2, curvature);
  membraneStrain(x, y, l0, l1, l2, membrane);
  for (let r = 0; r < 3; r++) {
    const row = COUPLED_DOFS * r;
    for (let p = 0; p < 9; p++)
      out[row + p] =
        offset[3 * r] * curvature[p] + offset[3 * r + 1] * curvature[9 + p] + offset[3 * r + 2] * curvature[18 + p];
    for (let node = 0; node < 6; node++) {
      out[row + 9 + 3 * node] = 0;
      out[row + 10 + 3 * node] = membrane[12 * r + 2 * node];
      out[row + 11 + 3 * node] = membrane[12 * r + 2 * node + 1];
    }
  }
}

/**
 * Stiffness of a triangle that bends and stretches: that of the plate about its neutral surface, and
 * `integral of E' A E dA` with the strain E of that surface. Integrated exactly.
 *
 * @param stretching A as `[A11, A12, A13, A22, A23, A33]`, N/mm
 * @param Ke `[27 * 27]` out, row-major; rows and columns of the missing dofs are zero
 */
export function coupledStiffness(
  x: Float64Array,
  y: Float64Array,
  bending: Float64Array,
  shear: Float64Array | null,
  stretching: Float64Array,
  offset: Float64Array,
  Ke: Float64Array,
): void {
  plateStiffness(x, y, bending, shear, K);
  Ke.fill(0);
  for (let p = 0; p < 9; p++) for (let q = 0; q < 9; q++) Ke[COUPLED_DOFS * p + q] = K[9 * p + q];
  const weight = twiceArea(x, y) / 6;
  const [A11, A12, A13, A22, A23, A33] = stretching;
  const n = COUPLED_DOFS;
  for (const [l0, l1, l2] of POINTS) {
    neutralStrain(x, y, bending, shear, offset, l0, l1, l2, E);
    for (let p = 0; p < n; p++) {
      const exx = weight * E[p];
      const eyy = weight * E[n + p];
      const twist = weight * E[2 * n + p];
      N[p] = A11 * exx + A12 * eyy + A13 * twist;
      N[n + p] = A12 * exx + A22 * eyy + A23 * twist;
      N[2 * n + p] = A13 * exx + A23 * eyy + A33 * twist;
    }
    for (let p = 0; p < n; p++)
      for (let q = 0; q <= p; q++) Ke[n * p + q] += E[p] * N[q] + E[n + p] * N[n + q] + E[2 * n + p] * N[2 * n + q];
  }
  for (let p = 0; p < n; p++) for (let q = p + 1; q < n; q++) Ke[n * p + q] = Ke[n * q + p];
}
