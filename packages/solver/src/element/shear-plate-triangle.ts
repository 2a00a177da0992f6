import { bendingProduct } from './bending-product.ts';
import { bulgeStiffness } from './bulge-stiffness.ts';
import { curvature, sideBulge, twiceArea } from './plate-kinematics.ts';

/** Scratch of one call; kept so that assembly allocates nothing. */
const phi = new Float64Array(3);
const a = new Float64Array(27);
const R = new Float64Array(9);

/**
 * Shear ratio of each side, `phi_k = 12 D_k / (S_k |e_k|^2)`: what shear adds to the bending compliance of a beam
 * as long as the side.
 *
 * Katili (1993) gives `phi_k = 2/(kappa (1 - nu)) (t/|e_k|)^2` for an isotropic plate. For any other section we take
 * the bending and shear stiffness of a strip along the side: `D_k = v' D v` with `v = (c^2, s^2, 2 c s)` and
 * `S_k = (c, s)' S (c, s)` for the side's direction (c, s). Both are scalars of the direction, so that the element
 * does not depend on the axes, and the isotropic case is Katili's.
 */
function shearRatio(x: Float64Array, y: Float64Array, bending: Float64Array, shear: Float64Array): void {
  for (let k = 0; k < 3; k++) {
    const i = k === 2 ? 0 : k + 1;
    const j = k === 0 ? 2 : k - 1;
    const ex = x[j] - x[i];
    const ey = y[j] - y[i];
    const xx = ex * ex;
    const yy = ey * ey;
    const xy = 2 * ex * ey;
    const D =
      bending[0] * xx * xx +
      bending[3] * yy * yy +
      bending[5] * xy * xy +
      2 * (bending[1] * xx * yy + bending[2] * xx * xy + bending[4] * yy * xy);
    const S = shear[0] * xx + shear[1] * xy + shear[2] * yy;
    phi[k] = (12 * D) / (S * (xx + yy) * (xx + yy));
  }
}

/** `-2/3 phi_k |e_k|^2`: shear strain along side k times its length, per bulge. */
function sideShear(x: Float64Array, y: Float64Array, k: number): number {
  const i = k === 2 ? 0 : k + 1;
  const j = k === 0 ? 2 : k - 1;
  return (-2 / 3) * phi[k] * ((x[j] - x[i]) ** 2 + (y[j] - y[i]) ** 2);
}

/**
 * Stiffness of the shear plate triangle: the discrete Kirchhoff-Mindlin triangle of Katili (1993, IJNME 36).
 *
 * Shear strains follow from the constant strain along each side by
 * `gamma = sum_k |e_k| gamma_k (L_i grad L_j - L_j grad L_i)`, which is Katili's vertex interpolation written without
 * vertices. Tends to the thin plate triangle as the shear ratio goes to zero, without locking. Integrated exactly.
 *
 * @param x node coordinates counter-clockwise, mm, `[3]`
 * @param y likewise
 * @param bending `[D11, D12, D13, D22, D23, D33]`, N mm
 * @param shear `[S11, S12, S22]`, N/mm
 * @param Ke `[9 * 9]` out, row-major, dofs w, thetaX, thetaY per node
 */
export function shearPlateStiffness(
  x: Float64Array,
  y: Float64Array,
  bending: Float64Array,
  shear: Float64Array,
  Ke: Float64Array,
): void {
  shearRatio(x, y, bending, shear);
  sideBulge(x, y, phi, a);
  bulgeStiffness(x, y, bending, R);
  addShearStiffness(x, y, shear);
  bendingProduct(x, y, bending, a, R, Ke);
}

/** `R_kl += g_k g_l integral of W_k' S W_l`, W_k = L_i grad L_j - L_j grad L_i, with `integral of L_m L_n = A/12 (1 + delta_mn)`. */
function addShearStiffness(x: Float64Array, y: Float64Array, shear: Float64Array): void {
  const g0 = sideShear(x, y, 0);
  const g1 = sideShear(x, y, 1);
  const g2 = sideShear(x, y, 2);
  const A2 = twiceArea(x, y);
  const e0x = x[2] - x[1];
  const e0y = y[2] - y[1];
  const e1x = x[0] - x[2];
  const e1y = y[0] - y[2];
  // s_mn = grad L_m' S grad L_n, times twice the area squared, over 12 A.
  const scale = 1 / (12 * A2);
  const s00 = scale * (shear[0] * e0y * e0y - 2 * shear[1] * e0x * e0y + shear[2] * e0x * e0x);
  const s11 = scale * (shear[0] * e1y * e1y - 2 * shear[1] * e1x * e1y + shear[2] * e1x * e1x);
  const s01 = scale * (shear[0] * e0y * e1y - shear[1] * (e0x * e1y + e0y * e1x) + shear[2] * e0x * e1x);
  const s02 = -(s00 + s01);
  const s12 = -(s01 + s11);
  const s22 = -(s02 + s12);
  R[0] += g0 * g0 * (s11 + s22 - s12);
  R[4] += g1 * g1 * (s00 + s22 - s02);
  R[8] += g2 * g2 * (s00 + s11 - s01);
  const r01 = g0 * g1 * (s22 + s01);
  const r02 = g0 * g2 * (s11 + s02);
  const r12 = g1 * g2 * (s00 + s12);
  R[1] -= r01;
  R[3] -= r01;
  R[2] -= r02;
  R[6] -= r02;
  R[5] -= r12;
  R[7] -= r12;
}

/**
 * Curvature operator of the shear plate triangle at barycentric coordinates: `{kxx, kyy, 2 kxy} = Bk u`.
 *
 * @param Bk `[3 * 9]` out, row-major
 */
export function shearPlateCurvature(
  x: Float64Array,
  y: Float64Array,
  bending: Float64Array,
  shear: Float64Array,
  l0: number,
  l1: number,
  l2: number,
  Bk: Float64Array,
): void {
  shearRatio(x, y, bending, shear);
  sideBulge(x, y, phi, a);
  curvature(x, y, a, l0, l1, l2, Bk);
}

/**
 * Shear strain operator at barycentric coordinates: `{gammaX, gammaY} = Bg u` with `gamma = grad w + beta`.
 * Transverse shear forces are `{qx, qy} = S gamma`.
 *
 * @param Bg `[2 * 9]` out, row-major
 */
export function shearPlateStrain(
  x: Float64Array,
  y: Float64Array,
  bending: Float64Array,
  shear: Float64Array,
  l0: number,
  l1: number,
  l2: number,
  Bg: Float64Array,
): void {
  shearRatio(x, y, bending, shear);
  sideBulge(x, y, phi, a);
  const perTwiceArea = 1 / twiceArea(x, y);
  Bg.fill(0);
  for (let k = 0; k < 3; k++) {
    const i = k === 2 ? 0 : k + 1;
    const j = k === 0 ? 2 : k - 1;
    const li = i === 0 ? l0 : i === 1 ? l1 : l2;
    const lj = j === 0 ? l0 : j === 1 ? l1 : l2;
    const g = sideShear(x, y, k) * perTwiceArea;
    // W_k = L_i grad L_j - L_j grad L_i with e_j = x_i - x_k and e_i = x_k - x_j turned left.
    const wx = g * (-li * (y[i] - y[k]) + lj * (y[k] - y[j]));
    const wy = g * (li * (x[i] - x[k]) - lj * (x[k] - x[j]));
    for (let p = 0; p < 9; p++) {
      Bg[p] += wx * a[9 * k + p];
      Bg[9 + p] += wy * a[9 * k + p];
    }
  }
}
