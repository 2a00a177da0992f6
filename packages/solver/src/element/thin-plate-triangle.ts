import { bendingProduct } from './bending-product.ts';
import { bulgeStiffness } from './bulge-stiffness.ts';
import { curvature, sideBulge } from './plate-kinematics.ts';

/** Scratch of one call; kept so that assembly allocates nothing. */
const a = new Float64Array(27);
const H = new Float64Array(9);
const noShear = new Float64Array(3);

/**
 * Stiffness of the thin plate triangle: the discrete Kirchhoff triangle of Batoz, Bathe and Ho (1980, IJNME 15),
 * normals stay straight and, along the sides, perpendicular. Integrated exactly.
 *
 * @param x node coordinates counter-clockwise, mm, `[3]`
 * @param y likewise
 * @param bending `[D11, D12, D13, D22, D23, D33]`, N mm, positive definite; may be anisotropic
 * @param Ke `[9 * 9]` out, row-major, dofs w, thetaX, thetaY per node; N/mm, N and N mm
 */
export function thinPlateStiffness(x: Float64Array, y: Float64Array, bending: Float64Array, Ke: Float64Array): void {
  sideBulge(x, y, noShear, a);
  bulgeStiffness(x, y, bending, H);
  bendingProduct(x, y, bending, a, H, Ke);
}

/**
 * Curvature operator of the thin plate triangle at barycentric coordinates: `{kxx, kyy, 2 kxy} = Bk u`.
 *
 * @param Bk `[3 * 9]` out, row-major
 */
export function thinPlateCurvature(
  x: Float64Array,
  y: Float64Array,
  l0: number,
  l1: number,
  l2: number,
  Bk: Float64Array,
): void {
  sideBulge(x, y, noShear, a);
  curvature(x, y, a, l0, l1, l2, Bk);
}
