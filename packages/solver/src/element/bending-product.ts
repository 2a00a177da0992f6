/** Scratch of one call; entries that are never set are zero. */
const linear = new Float64Array(27);

/**
 * `Ke = A B' D B + a' R a` of a plate triangle with mean curvature `B = B0 + Q a`, where B0 is the curvature of linear
 * rotations and column k of Q that of a unit bulge of side k. Unrolled: B0 and a have two entries in a column.
 *
 * @param x node coordinates counter-clockwise, mm, `[3]`
 * @param y likewise
 * @param bending `[D11, D12, D13, D22, D23, D33]`
 * @param a side bulges, `[3 * 9]`
 * @param R stiffness between the side bulges, `[3 * 3]`, symmetric
 * @param Ke `[9 * 9]` out, symmetric
 */
export function bendingProduct(
  x: Float64Array,
  y: Float64Array,
  bending: Float64Array,
  a: Float64Array,
  R: Float64Array,
  Ke: Float64Array,
): void {
  const e0x = x[2] - x[1];
  const e0y = y[2] - y[1];
  const e1x = x[0] - x[2];
  const e1y = y[0] - y[2];
  const e2x = x[1] - x[0];
  const e2y = y[1] - y[0];
  const area = (e1x * e2y - e2x * e1y) / 2;
  const D11 = area * bending[0];
  const D12 = area * bending[1];
  const D13 = area * bending[2];
  const D22 = area * bending[3];
  const D23 = area * bending[4];
  const D33 = area * bending[5];
  const R00 = R[0];
  const R01 = R[1];
  const R02 = R[2];
  const R11 = R[4];
  const R12 = R[5];
  const R22 = R[8];

  // grad L_k is e_k turned left over twice the area.
  const perTwiceArea = 0.5 / area;
  const g0x = -e0y * perTwiceArea;
  const g0y = e0x * perTwiceArea;
  const g1x = -e1y * perTwiceArea;
  const g1y = e1x * perTwiceArea;
  const g2x = -e2y * perTwiceArea;
  const g2y = e2x * perTwiceArea;
  const B = linear;
  B[2] = g0x;
  B[5] = g1x;
  B[8] = g2x;
  B[10] = -g0y;
  B[13] = -g1y;
  B[16] = -g2y;
  B[19] = -g0x;
  B[20] = g0y;
  B[22] = -g1x;
  B[23] = g1y;
  B[25] = -g2x;
  B[26] = g2y;

  // Columns of Q: -4/3 sym(grad L_k (x) e_k), of which the first two rows are opposite.
  const third = (-4 / 3) * perTwiceArea;
  const q0 = third * e0x * e0y;
  const q1 = third * e1x * e1y;
  const q2 = third * e2x * e2y;
  const t0 = third * (e0x * e0x - e0y * e0y);
  const t1 = third * (e1x * e1x - e1y * e1y);
  const t2 = third * (e2x * e2x - e2y * e2y);

  // Nonzero entries of a, by side: on w of its end, on thetaX and on thetaY of both its nodes.
  const w0 = a[6];
  const w1 = a[9];
  const w2 = a[21];
  const u0 = a[4];
  const u1 = a[10];
  const u2 = a[19];
  const v0 = a[5];
  const v1 = a[11];
  const v2 = a[20];

  for (let q = 0; q < 9; q++) {
    const a0 = a[q];
    const a1 = a[9 + q];
    const a2 = a[18 + q];
    const twist = q0 * a0 + q1 * a1 + q2 * a2;
    const bx = B[q] - twist;
    const by = B[9 + q] + twist;
    const bt = B[18 + q] + t0 * a0 + t1 * a1 + t2 * a2;
    // Y = A D B and Z = R a + Q' Y, so that Ke = B0' Y + a' Z.
    const Yx = D11 * bx + D12 * by + D13 * bt;
    const Yy = D12 * bx + D22 * by + D23 * bt;
    const Yt = D13 * bx + D23 * by + D33 * bt;
    const Yd = Yy - Yx;
    const Z0 = R00 * a0 + R01 * a1 + R02 * a2 + q0 * Yd + t0 * Yt;
    const Z1 = R01 * a0 + R11 * a1 + R12 * a2 + q1 * Yd + t1 * Yt;
    const Z2 = R02 * a0 + R12 * a1 + R22 * a2 + q2 * Yd + t2 * Yt;
    Ke[q] = w1 * Z1 - w2 * Z2;
    Ke[9 + q] = u1 * Z1 + u2 * Z2 - g0y * Yy - g0x * Yt;
    Ke[18 + q] = v1 * Z1 + v2 * Z2 + g0x * Yx + g0y * Yt;
    // Rows below the diagonal block are the mirror of columns to come.
    if (q < 3) continue;
    Ke[27 + q] = w2 * Z2 - w0 * Z0;
    Ke[36 + q] = u2 * Z2 + u0 * Z0 - g1y * Yy - g1x * Yt;
    Ke[45 + q] = v2 * Z2 + v0 * Z0 + g1x * Yx + g1y * Yt;
    if (q < 6) continue;
    Ke[54 + q] = w0 * Z0 - w1 * Z1;
    Ke[63 + q] = u0 * Z0 + u1 * Z1 - g2y * Yy - g2x * Yt;
    Ke[72 + q] = v0 * Z0 + v1 * Z1 + g2x * Yx + g2y * Yt;
  }
  for (let p = 1; p < 9; p++) for (let q = 0; q < p; q++) Ke[9 * p + q] = Ke[9 * q + p];
}
