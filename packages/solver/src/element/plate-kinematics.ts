/**
 * What the thin and the shear plate triangle have in common.
 *
 * Nodes 0, 1, 2 run counter-clockwise; side k lies opposite node k and runs along `e_k` from node i = k + 1 to
 * j = k + 2 (mod 3). With `beta = (thetaY, -thetaX)` the rotation of the normal is linear but for one bulge per side,
 *
 *     beta = sum_n L_n beta_n + sum_k 4 L_i L_j alpha_k e_k
 *     alpha_k = -3/2 / ((1 + phi_k) |e_k|^2) * (w_j - w_i + (beta_i + beta_j) . e_k / 2)
 *
 * which makes the shear strain along each side constant, `-2/3 phi_k |e_k| alpha_k`, and zero where phi_k = 0
 * (Batoz, Bathe, Ho 1980; Katili 1993). Curvatures are linear over the triangle: their mean and three bulges.
 */

/** Twice the signed area of a triangle, mm2. */
export function twiceArea(x: Float64Array, y: Float64Array): number {
  return (x[1] - x[0]) * (y[2] - y[0]) - (x[2] - x[0]) * (y[1] - y[0]);
}

/**
 * Operator of the side bulges: `alpha = a u` with u = (w, thetaX, thetaY) per node.
 *
 * @param phi shear ratio of each side, `[3]`; zeros for a thin plate
 * @param a `[3 * 9]` out, 1/mm2 for w, 1/mm for rotations
 */
export function sideBulge(x: Float64Array, y: Float64Array, phi: Float64Array, a: Float64Array): void {
  for (let k = 0; k < 3; k++) {
    const i = k === 2 ? 0 : k + 1;
    const j = k === 0 ? 2 : k - 1;
    const ex = x[j] - x[i];
    const ey = y[j] - y[i];
    const c = -1.5 / ((1 + phi[k]) * (ex * ex + ey * ey));
    const row = 9 * k;
    a[row + 3 * k] = 0;
    a[row + 3 * k + 1] = 0;
    a[row + 3 * k + 2] = 0;
    a[row + 3 * i] = -c;
    a[row + 3 * j] = c;
    a[row + 3 * i + 1] = a[row + 3 * j + 1] = -0.5 * c * ey;
    a[row + 3 * i + 2] = a[row + 3 * j + 2] = 0.5 * c * ex;
  }
}

/**
 * Operator of the mean curvature over the triangle,
 * `mean = sum_n sym(grad L_n (x) beta_n) - 4/3 sum_k alpha_k sym(grad L_k (x) e_k)`.
 *
 * @param a from {@link sideBulge}
 * @param B `[3 * 9]` out: rows kxx, kyy, 2 kxy
 */
function meanCurvature(x: Float64Array, y: Float64Array, a: Float64Array, B: Float64Array): void {
  const perTwiceArea = 1 / twiceArea(x, y);
  B.fill(0);
  for (let k = 0; k < 3; k++) {
    const i = k === 2 ? 0 : k + 1;
    const j = k === 0 ? 2 : k - 1;
    const ex = x[j] - x[i];
    const ey = y[j] - y[i];
    // grad L_k is e_k turned left by 90 degrees over twice the area.
    const gx = -ey * perTwiceArea;
    const gy = ex * perTwiceArea;
    B[3 * k + 2] += gx;
    B[9 + 3 * k + 1] -= gy;
    B[18 + 3 * k + 1] -= gx;
    B[18 + 3 * k + 2] += gy;
    const q0 = (-4 / 3) * gx * ex;
    const q1 = (-4 / 3) * gy * ey;
    const q2 = (-4 / 3) * (gx * ey + gy * ex);
    for (let p = 0; p < 9; p++) {
      const bulge = a[9 * k + p];
      B[p] += q0 * bulge;
      B[9 + p] += q1 * bulge;
      B[18 + p] += q2 * bulge;
    }
  }
}

/**
 * Operator of the curvature at barycentric coordinates L,
 * `mean + sum_k 4 alpha_k ((L_i - 1/3) sym(grad L_j (x) e_k) + (L_j - 1/3) sym(grad L_i (x) e_k))`.
 *
 * @param B `[3 * 9]` out: rows kxx, kyy, 2 kxy
 */
export function curvature(
  x: Float64Array,
  y: Float64Array,
  a: Float64Array,
  l0: number,
  l1: number,
  l2: number,
  B: Float64Array,
): void {
  meanCurvature(x, y, a, B);
  const perTwiceArea = 1 / twiceArea(x, y);
  for (let k = 0; k < 3; k++) {
    const i = k === 2 ? 0 : k + 1;
    const j = k === 0 ? 2 : k - 1;
    const li = (i === 0 ? l0 : i === 1 ? l1 : l2) - 1 / 3;
    const lj = (j === 0 ? l0 : j === 1 ? l1 : l2) - 1 / 3;
    const ex = x[j] - x[i];
    const ey = y[j] - y[i];
    // grad (L_i L_j), with e_i = x_k - x_j and e_j = x_i - x_k turned left.
    const gx = 4 * perTwiceArea * (li * (y[k] - y[i]) + lj * (y[j] - y[k]));
    const gy = 4 * perTwiceArea * (li * (x[i] - x[k]) + lj * (x[k] - x[j]));
    for (let p = 0; p < 9; p++) {
      const bulge = a[9 * k + p];
      B[p] += gx * ex * bulge;
      B[9 + p] += gy * ey * bulge;
      B[18 + p] += (gx * ey + gy * ex) * bulge;
    }
  }
}
