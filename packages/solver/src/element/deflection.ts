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
 * Adds the weights of the integral over a polygon inside the triangle, by the mid-side rule on a signed fan: exact,
 * since weights are quadratic, for any simple polygon and for the zero-width necks that clipping leaves.
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
  const [ax, ay] = [polygon[0], polygon[1]];
  for (let c = 2; c < count; c++) {
    const [bx, by, cx, cy] = [polygon[2 * c - 2], polygon[2 * c - 1], polygon[2 * c], polygon[2 * c + 1]];
    const third = ((bx - ax) * (cy - ay) - (cx - ax) * (by - ay)) / 6;
    addPointWeights(x, y, (ax + bx) / 2, (ay + by) / 2, third, weights);
    addPointWeights(x, y, (bx + cx) / 2, (by + cy) / 2, third, weights);
    addPointWeights(x, y, (cx + ax) / 2, (cy + ay) / 2, third, weights);
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
