import { Matrix, solve } from 'ml-matrix';

/** Odd waves along each side that carry the moments of the edges. */
const EDGE = 60;
/** Odd waves of the plate. */
const WAVES = 800;

/**
 * Deflection in the middle of a clamped rectangle, over `q a^4 / D` for unit pressure or `P a^2 / D` for a point load in
 * the middle: the simply supported plate plus edge moments that bring the slopes back to zero (Timoshenko and
 * Woinowsky-Krieger, Art. 44). With `w = sum A_mn cos p x cos r y`, m and n odd, virtual work gives
 *
 *     D (p^2 + r^2)^2 (a b / 4) A_mn = Q_mn - a r s_n E_m - b p s_m F_n
 *     sum_n r s_n A_mn = 0,   sum_m p s_m A_mn = 0,   s_n = (-1)^((n - 1)/2)
 *
 * for moments E_m along x and F_n along y.
 */
export function clampedDeflection(ratio: number, load: 'pressure' | 'point'): number {
  const [a, b] = [1, ratio];
  const wave = (index: number, side: number) => ((2 * index + 1) * Math.PI) / side;
  const sign = (index: number) => (index % 2 === 0 ? 1 : -1);
  const Q = (i: number, j: number) => (load === 'point' ? 1 : ((4 * sign(i)) / wave(i, a)) * (sign(j) / wave(j, b)));

  const A = Matrix.zeros(2 * EDGE, 2 * EDGE);
  const rhs = Matrix.zeros(2 * EDGE, 1);
  for (let i = 0; i < EDGE; i++) {
    const [p, r] = [wave(i, a), wave(i, b)];
    A.set(i, i, a * slopes(p, b));
    A.set(EDGE + i, EDGE + i, b * slopes(r, a));
    let [alongX, alongY] = [0, 0];
    for (let k = 0; k < WAVES * 4; k++) {
      alongX += (wave(k, b) * sign(k) * Q(i, k)) / (p * p + wave(k, b) ** 2) ** 2;
      alongY += (wave(k, a) * sign(k) * Q(k, i)) / (r * r + wave(k, a) ** 2) ** 2;
    }
    rhs.set(i, 0, alongX);
    rhs.set(EDGE + i, 0, alongY);
    for (let j = 0; j < EDGE; j++) {
      const shared = (sign(i) * wave(i, a) * sign(j) * wave(j, b)) / (wave(i, a) ** 2 + wave(j, b) ** 2) ** 2;
      A.set(i, EDGE + j, b * shared);
      A.set(EDGE + j, i, a * shared);
    }
  }
  const edges = solve(A, rhs).to1DArray();
  let w = 0;
  for (let i = 0; i < WAVES; i++)
    for (let j = 0; j < WAVES; j++) {
      const [p, r] = [wave(i, a), wave(j, b)];
      const E = i < EDGE ? a * r * sign(j) * edges[i] : 0;
      const F = j < EDGE ? b * p * sign(i) * edges[EDGE + j] : 0;
      w += (4 * (Q(i, j) - E - F)) / (a * b * (p * p + r * r) ** 2);
    }
  return w;
}

/** `sum over odd n of r^2 / (p^2 + r^2)^2`, r = n pi / side, from `sum 1/(p^2 + r^2) = side/(4 p) tanh(p side/2)`. */
function slopes(p: number, side: number): number {
  const x = (p * side) / 2;
  const sum = (side / (4 * p)) * Math.tanh(x);
  const squared = (side / (8 * p ** 3)) * (Math.tanh(x) - x / Math.cosh(x) ** 2);
  return sum - p * p * squared;
}
