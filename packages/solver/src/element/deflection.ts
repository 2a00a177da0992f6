/**
 * Deflection inside a plate triangle from its nine dofs: the one definition behind loads, supports, foundations,
 * samples and extremes.
 *
 *     w = sum_n L_n w_n + sum_k L_i L_j (beta_j - beta_i) . e_k / 2,   beta = (thetaY, -thetaX)
 *
 * over the sides k from node i to node j: the linked interpolation of Taylor and Auricchio (1993, IJNME 36,
 * "Linked interpolation for Reissner-Mindlin plate elements: Part II, a simple triangle"). Rigid motions, constant
 * shear and every quadratic w are exact, and w is continuous from element to element, whatever their sections.
 * A cubic along the sides would be no better in order, since nine dofs can't hold a complete cubic, and it would
 * tie w to the shear stiffness: thin and shear plates share this one instead.
 *
 * Barycentric coordinates enter w only through `L_n` and `L_i L_j`, hence a point value and an integral of w differ
 * only in the six {@link DeflectionWeights} that they are made from.
 */

/**
 * `[L0, L1, L2, L1 L2, L2 L0, L0 L1]` at a point, or their integrals over a line or an area: six numbers that fix a
 * point value or an integral of w.
 */
export type DeflectionWeights = Float64Array;

/**
 * Row N with `N u = w`, or its integral, for the weights given.
 *
 * @param x node coordinates counter-clockwise, mm, `[3]`
 * @param y likewise
 * @param weights `[6]`
 * @param N `[9]` out, dofs w, thetaX, thetaY per node
 */
export function deflectionRow(x: Float64Array, y: Float64Array, weights: DeflectionWeights, N: Float64Array): void {
  for (let n = 0; n < 3; n++) {
    const [next, last] = [n === 2 ? 0 : n + 1, n === 0 ? 2 : n - 1];
    // Node n ends side `next` and begins side `last`.
    const ends = 0.5 * weights[3 + next];
    const begins = 0.5 * weights[3 + last];
    N[3 * n] = weights[n];
    N[3 * n + 1] = begins * (y[next] - y[n]) - ends * (y[n] - y[last]);
    N[3 * n + 2] = ends * (x[n] - x[last]) - begins * (x[next] - x[n]);
  }
}

/** Row N with `N u = w` at barycentric coordinates; N `[9]` out. */
export function deflectionShape(
  x: Float64Array,
  y: Float64Array,
  l0: number,
  l1: number,
  l2: number,
  N: Float64Array,
): void {
  deflectionRow(x, y, Float64Array.of(l0, l1, l2, l1 * l2, l2 * l0, l0 * l1), N);
}

/** Weights of the integral of w over the whole triangle: `integral of L_m L_n = A/12 (1 + delta_mn)`. */
export function wholeWeights(area: number, weights: DeflectionWeights): void {
  weights.fill(area / 3, 0, 3);
  weights.fill(area / 12, 3, 6);
}

/**
 * Adds the weights of the integral over a polygon inside the triangle, on a signed fan: exact for any simple polygon
 * and for the zero-width necks that clipping leaves. Over a fan triangle of area A with corners p,
 * `integral of f = A/3 sum_p f_p` and `integral of f g = A/12 (sum_p f_p sum_p g_p + sum_p f_p g_p)` for linear f, g.
 *
 * @param polygon `[2 * count]` x, y of each corner, counter-clockwise
 */
export function addPolygonWeights(
  x: Float64Array,
  y: Float64Array,
  polygon: Float64Array,
  count: number,
  weights: DeflectionWeights,
): void {
  const ux = x[1] - x[0];
  const uy = y[1] - y[0];
  const vx = x[2] - x[0];
  const vy = y[2] - y[0];
  const twiceArea = ux * vy - vx * uy;
  // L1 and L2 of the corners a, b, c of the fan triangle.
  let dx = polygon[0] - x[0];
  let dy = polygon[1] - y[0];
  const a1 = (dx * vy - vx * dy) / twiceArea;
  const a2 = (ux * dy - dx * uy) / twiceArea;
  let b1 = 0;
  let b2 = 0;
  for (let corner = 1; corner < count; corner++) {
    dx = polygon[2 * corner] - x[0];
    dy = polygon[2 * corner + 1] - y[0];
    const c1 = (dx * vy - vx * dy) / twiceArea;
    const c2 = (ux * dy - dx * uy) / twiceArea;
    if (corner > 1) {
      const area = (twiceArea * ((b1 - a1) * (c2 - a2) - (c1 - a1) * (b2 - a2))) / 2;
      const a0 = 1 - a1 - a2;
      const b0 = 1 - b1 - b2;
      const c0 = 1 - c1 - c2;
      const s0 = a0 + b0 + c0;
      const s1 = a1 + b1 + c1;
      const s2 = a2 + b2 + c2;
      weights[0] += (area / 3) * s0;
      weights[1] += (area / 3) * s1;
      weights[2] += (area / 3) * s2;
      weights[3] += (area / 12) * (s1 * s2 + a1 * a2 + b1 * b2 + c1 * c2);
      weights[4] += (area / 12) * (s2 * s0 + a2 * a0 + b2 * b0 + c2 * c0);
      weights[5] += (area / 12) * (s0 * s1 + a0 * a1 + b0 * b1 + c0 * c1);
    }
    b1 = c1;
    b2 = c2;
  }
}

/** Adds the weights of the integral along the segment a-b inside the triangle: two Gauss points, exact. */
export function addSegmentWeights(
  x: Float64Array,
  y: Float64Array,
  ax: number,
  ay: number,
  bx: number,
  by: number,
  weights: DeflectionWeights,
): void {
  const half = Math.hypot(bx - ax, by - ay) / 2;
  const near = (1 - 1 / Math.sqrt(3)) / 2;
  const [dx, dy] = [bx - ax, by - ay];
  addPointWeights(x, y, ax + near * dx, ay + near * dy, half, weights);
  addPointWeights(x, y, bx - near * dx, by - near * dy, half, weights);
}

/** Adds `factor` times the weights of the value at (px, py). */
export function addPointWeights(
  x: Float64Array,
  y: Float64Array,
  px: number,
  py: number,
  factor: number,
  weights: DeflectionWeights,
): void {
  const [ux, uy, vx, vy] = [x[1] - x[0], y[1] - y[0], x[2] - x[0], y[2] - y[0]];
  const [dx, dy] = [px - x[0], py - y[0]];
  const twiceArea = ux * vy - vx * uy;
  const l1 = (dx * vy - vx * dy) / twiceArea;
  const l2 = (ux * dy - dx * uy) / twiceArea;
  const l0 = 1 - l1 - l2;
  weights[0] += factor * l0;
  weights[1] += factor * l1;
  weights[2] += factor * l2;
  weights[3] += factor * l1 * l2;
  weights[4] += factor * l2 * l0;
  weights[5] += factor * l0 * l1;
}
