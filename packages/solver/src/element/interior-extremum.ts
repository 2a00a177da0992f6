/** A signed extreme of a field inside a triangle. */
export interface TriangleExtreme {
  readonly value: number;
  readonly x: number;
  readonly y: number;
}

/**
 * Largest and smallest deviation `w - (a + bx x + by y)` inside a plate triangle, with the deflection of deflection.ts.
 *
 * The deviation is quadratic, so the extremes are among its corner values, the vertex of the parabola along each side
 * and the one point where its gradient vanishes: closed form, nothing is sampled.
 *
 * @param x node coordinates counter-clockwise, mm, `[3]`
 * @param y likewise
 * @param u w, thetaX, thetaY per node, `[9]`
 * @param plane `[a, bx, by]`
 */
export function interiorExtremum(
  x: Float64Array,
  y: Float64Array,
  u: Float64Array,
  plane: readonly [a: number, bx: number, by: number],
): { readonly min: TriangleExtreme; readonly max: TriangleExtreme } {
  const [a, bx, by] = plane;
  const d = [0, 1, 2].map((n) => u[3 * n] - (a + bx * x[n] + by * y[n]));
  // c_k of `sum_n L_n d_n + sum_k c_k L_i L_j`.
  const c = [0, 1, 2].map((k) => {
    const [i, j] = [(k + 1) % 3, (k + 2) % 3];
    return ((u[3 * j + 2] - u[3 * i + 2]) * (x[j] - x[i]) - (u[3 * j + 1] - u[3 * i + 1]) * (y[j] - y[i])) / 2;
  });
  let min: TriangleExtreme = { value: d[0], x: x[0], y: y[0] };
  let max = min;
  const consider = (l0: number, l1: number, l2: number): void => {
    const value = l0 * d[0] + l1 * d[1] + l2 * d[2] + c[0] * l1 * l2 + c[1] * l2 * l0 + c[2] * l0 * l1;
    if (value >= min.value && value <= max.value) return;
    const extreme = { value, x: l0 * x[0] + l1 * x[1] + l2 * x[2], y: l0 * y[0] + l1 * y[1] + l2 * y[2] };
    if (value < min.value) min = extreme;
    if (value > max.value) max = extreme;
  };
  consider(0, 1, 0);
  consider(0, 0, 1);
  for (let k = 0; k < 3; k++) {
    const [i, j] = [(k + 1) % 3, (k + 2) % 3];
    // Along the side, s = L_j: d_i + s (d_j - d_i) + c_k s (1 - s).
    const s = (d[j] - d[i] + c[k]) / (2 * c[k]);
    if (!(s > 0 && s < 1)) continue;
    const l = [0, 0, 0];
    l[i] = 1 - s;
    l[j] = s;
    consider(l[0], l[1], l[2]);
  }
  // With L0 = 1 - L1 - L2: gradient (g1, g2) - H (L1, L2) = 0, H = [2 c2, c1 + c2 - c0; ., 2 c1].
  const [g1, g2, h] = [d[1] - d[0] + c[2], d[2] - d[0] + c[1], c[1] + c[2] - c[0]];
  const determinant = 4 * c[2] * c[1] - h * h;
  if (determinant > 0) {
    const l1 = (2 * c[1] * g1 - h * g2) / determinant;
    const l2 = (2 * c[2] * g2 - h * g1) / determinant;
    if (l1 > 0 && l2 > 0 && l1 + l2 < 1) consider(1 - l1 - l2, l1, l2);
  }
  return { min, max };
}
