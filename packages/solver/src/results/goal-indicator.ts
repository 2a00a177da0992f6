import type { Structure } from '../structure/structure.ts';
import { cornerMoments, smoothedMoments } from './moments.ts';

/**
 * How much each element adds to the error of a quantity: the product of the energy norms of the errors of the solution
 * and of its influence field in the element (Becker and Rannacher 2001, An optimal control approach to a posteriori
 * error estimation), each error taken as the difference between smoothed and own moments (Zienkiewicz and Zhu 1987):
 *
 *     eta = |m* - m|_u |m* - m|_z,   |d|^2 = integral of d' D^-1 d
 *
 * @param u `[3 * nNodes]` solution, @param z its influence field
 * @param freeCurvature of each section, see {@link cornerMoments}
 * @returns `[nTriangles]`
 */
export function goalIndicator(
  structure: Structure,
  u: Float64Array,
  z: Float64Array,
  freeCurvature?: ArrayLike<number>,
): Float64Array {
  const { mesh, section, rigidities, theory } = structure;
  const sectioned = { ...mesh, region: section };
  const errors = [
    { field: u, free: freeCurvature },
    { field: z, free: undefined },
  ].map(({ field, free }) => {
    const own = cornerMoments(sectioned, rigidities, theory, field, free);
    const smooth = smoothedMoments(sectioned, own);
    return own.map((m, i) => smooth[i] - m);
  });
  const compliance = rigidities.map(({ bending }) => inverse(bending));
  const { x, y, triangles } = mesh;
  return Float64Array.from(section, (region, t) => {
    const [a, b, c] = [triangles[3 * t], triangles[3 * t + 1], triangles[3 * t + 2]];
    const area = ((x[b] - x[a]) * (y[c] - y[a]) - (x[c] - x[a]) * (y[b] - y[a])) / 2;
    const squares = errors.map((error) => energy(error.subarray(9 * t, 9 * t + 9), compliance[region]));
    return (area / 12) * Math.sqrt(squares[0] * squares[1]);
  });
}

/** `sum over corners i, j of (1 + delta_ij) d_i' C d_j = (sum d)' C (sum d) + sum d_i' C d_i`: 12/A of the integral. */
function energy(d: Float64Array, C: Float64Array): number {
  const form = (p: number, q: number, r: number): number =>
    C[0] * p * p + C[3] * q * q + C[5] * r * r + 2 * (C[1] * p * q + C[2] * p * r + C[4] * q * r);
  let sum = form(d[0] + d[3] + d[6], d[1] + d[4] + d[7], d[2] + d[5] + d[8]);
  for (let c = 0; c < 9; c += 3) sum += form(d[c], d[c + 1], d[c + 2]);
  return sum;
}

/** Inverse of a symmetric 3x3 matrix `[11, 12, 13, 22, 23, 33]`, in the same order. */
function inverse([a, b, c, d, e, f]: Float64Array): Float64Array {
  const [A, B, C] = [d * f - e * e, c * e - b * f, b * e - c * d];
  const determinant = a * A + b * B + c * C;
  return Float64Array.of(A, B, C, a * f - c * c, b * c - a * e, a * d - b * b).map((v) => v / determinant);
}
