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
export function meanCurvature(x: Float64Array, y: Float64Array, a: Float64Array, B: Float64Array): void {
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

/**
 * Bending stiffness between the side bulges, `H = integral of b_k' D b_l` with b_k the curvature of a unit bulge less
 * its mean; `integral of (L_m - 1/3)(L_n - 1/3) = A/36 (3 delta_mn - 1)`.
 *
 * @param bending `[D11, D12, D13, D22, D23, D33]`
 * @param H `[3 * 3]` out, symmetric
 */
export function bulgeStiffness(x: Float64Array, y: Float64Array, bending: Float64Array, H: Float64Array): void {
  const e0x = x[2] - x[1];
  const e0y = y[2] - y[1];
  const e1x = x[0] - x[2];
  const e1y = y[0] - y[2];
  const e2x = x[1] - x[0];
  const e2y = y[1] - y[0];
  const A2 = twiceArea(x, y);
  // v_kn = sym(grad L_n (x) e_k) times twice the area; v_kk = -(v_ki + v_kj).
  const D11 = bending[0];
  const D12 = bending[1];
  const D13 = bending[2];
  const D22 = bending[3];
  const D23 = bending[4];
  const D33 = bending[5];
  const a01 = -e1y * e0x;
  const b01 = e1x * e0y;
  const c01 = e1x * e0x - e1y * e0y;
  const a02 = -e2y * e0x;
  const b02 = e2x * e0y;
  const c02 = e2x * e0x - e2y * e0y;
  const a10 = -e0y * e1x;
  const b10 = e0x * e1y;
  const c10 = e0x * e1x - e0y * e1y;
  const a12 = -e2y * e1x;
  const b12 = e2x * e1y;
  const c12 = e2x * e1x - e2y * e1y;
  const a20 = -e0y * e2x;
  const b20 = e0x * e2y;
  const c20 = e0x * e2x - e0y * e2y;
  const a21 = -e1y * e2x;
  const b21 = e1x * e2y;
  const c21 = e1x * e2x - e1y * e2y;
  const a00 = -(a01 + a02);
  const b00 = -(b01 + b02);
  const c00 = -(c01 + c02);
  const a11 = -(a10 + a12);
  const b11 = -(b10 + b12);
  const c11 = -(c10 + c12);
  const a22 = -(a20 + a21);
  const b22 = -(b20 + b21);
  const c22 = -(c20 + c21);
  const form = (a: number, b: number, c: number, d: number, e: number, f: number): number =>
    a * (D11 * d + D12 * e + D13 * f) + b * (D12 * d + D22 * e + D23 * f) + c * (D13 * d + D23 * e + D33 * f);
  // 16 A/36 over (2 A)^2.
  const scale = 2 / (9 * A2);
  H[0] =
    scale *
    (3 * (form(a01, b01, c01, a01, b01, c01) + form(a02, b02, c02, a02, b02, c02)) -
      form(a00, b00, c00, a00, b00, c00));
  H[4] =
    scale *
    (3 * (form(a10, b10, c10, a10, b10, c10) + form(a12, b12, c12, a12, b12, c12)) -
      form(a11, b11, c11, a11, b11, c11));
  H[8] =
    scale *
    (3 * (form(a20, b20, c20, a20, b20, c20) + form(a21, b21, c21, a21, b21, c21)) -
      form(a22, b22, c22, a22, b22, c22));
  H[1] = H[3] = scale * (3 * form(a01, b01, c01, a10, b10, c10) - form(a00, b00, c00, a11, b11, c11));
  H[2] = H[6] = scale * (3 * form(a02, b02, c02, a20, b20, c20) - form(a00, b00, c00, a22, b22, c22));
  H[5] = H[7] = scale * (3 * form(a12, b12, c12, a21, b21, c21) - form(a11, b11, c11, a22, b22, c22));
}
