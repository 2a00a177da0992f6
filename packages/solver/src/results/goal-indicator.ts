import { triangleCorners } from '../assembly/triangle-corners.ts';
import { twiceArea } from '../element/plate-kinematics.ts';
import type { Structure } from '../structure/structure.ts';
import { cornerGroups } from './corner-groups.ts';
import { cornerCurvatures, smoothed } from './nodal-strain.ts';

/**
 * How much each element adds to the error of a quantity: the product of the energy norms of the errors of the solution
 * and of its influence field in the element (Becker and Rannacher 2001, An optimal control approach to a posteriori
 * error estimation), each error taken as the difference between smoothed and own curvatures (Zienkiewicz and Zhu 1987):
 *
 *     eta = |k* - k|_u |k* - k|_z,   |d|^2 = integral of d' D d
 *
 * A free curvature, as from heat, is the same all over a section and drops out. Stretching is left out: it goes with the
 * bending that it comes from.
 *
 * @param u `[3 * nRows]` solution, @param z its influence field
 * @returns `[nTriangles]`
 */
export function goalIndicator(structure: Structure, u: Float64Array, z: Float64Array): Float64Array {
  const { mesh, section, rigidities, theory } = structure;
  const sectioned = { ...mesh, region: section };
  const groups = cornerGroups(sectioned);
  const errors = cornerCurvatures(sectioned, rigidities, theory, [u, z]).map((own) => {
    const smooth = smoothed(sectioned, own, groups);
    return own.map((k, i) => smooth[i] - k);
  });
  const x = new Float64Array(3);
  const y = new Float64Array(3);
  return Float64Array.from(section, (region, t) => {
    triangleCorners(mesh, t, x, y);
    const squares = errors.map((error) => energy(error.subarray(9 * t, 9 * t + 9), rigidities[region].bending));
    return (twiceArea(x, y) / 24) * Math.sqrt(squares[0] * squares[1]);
  });
}

/** `sum over corners i, j of (1 + delta_ij) d_i' D d_j = (sum d)' D (sum d) + sum d_i' D d_i`: 12/A of the integral. */
function energy(d: Float64Array, D: Float64Array): number {
  const form = (p: number, q: number, r: number): number =>
    D[0] * p * p + D[3] * q * q + D[5] * r * r + 2 * (D[1] * p * q + D[2] * p * r + D[4] * q * r);
  let sum = form(d[0] + d[3] + d[6], d[1] + d[4] + d[7], d[2] + d[5] + d[8]);
  for (let c = 0; c < 9; c += 3) sum += form(d[c], d[c + 1], d[c + 2]);
  return sum;
}
