/** Scratch of one call. */
const gx = new Float64Array(3);
const gy = new Float64Array(3);

/**
 * Strain operator of the six-node membrane triangle with straight sides at barycentric coordinates,
 * `{exx, eyy, 2 exy} = B u`: in-plane displacements quadratic, strains linear over the triangle. A plate triangle's
 * rotations are quadratic too, so that moving the reference plane changes nothing and ribs off the plane don't lock
 * (Gupta and Ma 1977; Miller 1980).
 *
 * @param x corner coordinates counter-clockwise, mm, `[3]`
 * @param y likewise
 * @param B `[3 * 12]` out, row-major; u, v at the corners, then in the middle of the side opposite each corner
 */
export function membraneStrain(
  x: Float64Array,
  y: Float64Array,
  l0: number,
  l1: number,
  l2: number,
  B: Float64Array,
): void {
  const twiceArea = (x[1] - x[0]) * (y[2] - y[0]) - (x[2] - x[0]) * (y[1] - y[0]);
  for (let k = 0; k < 3; k++) {
    const i = k === 2 ? 0 : k + 1;
    const j = k === 0 ? 2 : k - 1;
    gx[k] = (y[i] - y[j]) / twiceArea;
    gy[k] = (x[j] - x[i]) / twiceArea;
  }
  for (let k = 0; k < 3; k++) {
    const i = k === 2 ? 0 : k + 1;
    const j = k === 0 ? 2 : k - 1;
    const [lk, li, lj] = k === 0 ? [l0, l1, l2] : k === 1 ? [l1, l2, l0] : [l2, l0, l1];
    // N = L (2 L - 1) at a corner, 4 Li Lj in the middle of a side.
    setColumns(B, 2 * k, (4 * lk - 1) * gx[k], (4 * lk - 1) * gy[k]);
    setColumns(B, 6 + 2 * k, 4 * (li * gx[j] + lj * gx[i]), 4 * (li * gy[j] + lj * gy[i]));
  }
}

/** Columns of u and v of a node whose shape function has the gradient (nx, ny). */
function setColumns(B: Float64Array, column: number, nx: number, ny: number): void {
  B[column] = nx;
  B[column + 1] = 0;
  B[12 + column] = 0;
  B[12 + column + 1] = ny;
  B[24 + column] = ny;
  B[24 + column + 1] = nx;
}
