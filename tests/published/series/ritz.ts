import { Matrix, solve } from 'ml-matrix';

/** Gauss points on [-1, 1] and weights, by Newton on the Legendre polynomial. */
function gauss(n: number): { x: number[]; w: number[] } {
  const x: number[] = [];
  const w: number[] = [];
  for (let i = 0; i < n; i++) {
    let z = Math.cos((Math.PI * (i + 0.75)) / (n + 0.5));
    let slope = 0;
    for (let step = 0; step < 50; step++) {
      let [p, before] = [1, 0];
      for (let k = 1; k <= n; k++) [p, before] = [((2 * k - 1) * z * p - (k - 1) * before) / k, p];
      slope = (n * (z * p - before)) / (z * z - 1);
      z -= p / slope;
    }
    x.push(z);
    w.push(2 / ((1 - z * z) * slope * slope));
  }
  return { x, w };
}

/** Legendre polynomials up to a degree with two derivatives: `[degree + 1][3]`. */
function legendre(degree: number, x: number): number[][] {
  const p = [
    [1, 0, 0],
    [x, 1, 0],
  ];
  for (let k = 2; k <= degree; k++) {
    const [a, b] = [(2 * k - 1) / k, (k - 1) / k];
    const [u, v] = [p[k - 1], p[k - 2]];
    p.push([a * x * u[0] - b * v[0], a * (u[0] + x * u[1]) - b * v[1], a * (2 * u[1] + x * u[2]) - b * v[2]]);
  }
  return p;
}

const GAUSS = gauss(48);

/** `integral over [-1, 1] of f_i^(d) g_j^(e)` for functions tabulated as `[point][function][derivative]`. */
function products(f: number[][][], d: number, g: number[][][], e: number): number[][] {
  return f[0].map((_, i) => g[0].map((__, j) => GAUSS.w.reduce((sum, w, k) => sum + w * f[k][i][d] * g[k][j][e], 0)));
}

/**
 * Square on its four corner points under unit pressure: deflections over `q a^4 / D` in the middle and in the middle of
 * a side. Ritz's method with `sum c_ij P_2i(x) P_2j(y)`, the corners held by one multiplier.
 */
export function squareOnCorners(nu: number, terms = 14): { readonly centre: number; readonly side: number } {
  const f = GAUSS.x.map((x) => legendre(2 * terms, x).filter((_, k) => k % 2 === 0));
  const n = terms + 1;
  const [M, K, L, S] = [products(f, 0, f, 0), products(f, 2, f, 2), products(f, 2, f, 0), products(f, 1, f, 1)];
  const A = Matrix.zeros(n * n + 1, n * n + 1);
  const rhs = Matrix.zeros(n * n + 1, 1);
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++) {
      const row = i * n + j;
      for (let k = 0; k < n; k++)
        for (let l = 0; l < n; l++)
          A.set(
            row,
            k * n + l,
            K[i][k] * M[j][l] +
              M[i][k] * K[j][l] +
              nu * (L[i][k] * L[l][j] + L[k][i] * L[j][l]) +
              2 * (1 - nu) * S[i][k] * S[j][l],
          );
      A.set(row, n * n, 1);
      A.set(n * n, row, 1);
    }
  rhs.set(0, 0, 4);
  const c = solve(A, rhs).to1DArray();
  const at = (x: number, y: number) => {
    const [px, py] = [legendre(2 * terms, x), legendre(2 * terms, y)];
    let w = 0;
    for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) w += c[i * n + j] * px[2 * i][0] * py[2 * j][0];
    // Sides of 2 in these coordinates.
    return w / 16;
  };
  return { centre: at(0, 0), side: at(0, 1) };
}

/**
 * Middle of a clamped square of Mindlin's theory under unit pressure, over `q a^4 / D`. Ritz's method: w and both
 * rotations are `(1 - x^2)(1 - y^2)` times polynomials of their symmetry.
 *
 * @param ratio thickness over side
 */
export function clampedWithShear(ratio: number, nu: number, terms = 9): number {
  const bubble = (odd: 0 | 1) =>
    GAUSS.x.map((x) =>
      legendre(2 * terms, x)
        .filter((_, k) => k % 2 === odd && k < 2 * terms)
        .map(([p, d]) => [(1 - x * x) * p, (1 - x * x) * d - 2 * x * p]),
    );
  const [even, odd] = [bubble(0), bubble(1)];
  const n = terms;
  const [E, O] = [products(even, 0, even, 0), products(odd, 0, odd, 0)];
  const [E1, O1] = [products(even, 1, even, 1), products(odd, 1, odd, 1)];
  // Sides of 2: kappa G t over D = 5/6 * 6 (1 - nu) / t^2 with t = 2 ratio.
  const shear = (5 * (1 - nu)) / (2 * ratio) ** 2;
  const twist = (1 - nu) / 2;
  const mixed = { eo: products(even, 0, odd, 1), oe: products(odd, 0, even, 1) };
  const size = 3 * n * n;
  const A = Matrix.zeros(size, size);
  const rhs = Matrix.zeros(size, 1);
  const w = (i: number, j: number) => i * n + j;
  const bx = (i: number, j: number) => n * n + i * n + j;
  const by = (i: number, j: number) => 2 * n * n + i * n + j;
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++) {
      rhs.set(
        w(i, j),
        0,
        GAUSS.w.reduce((s, g, k) => s + g * even[k][i][0], 0) * GAUSS.w.reduce((s, g, k) => s + g * even[k][j][0], 0),
      );
      for (let k = 0; k < n; k++)
        for (let l = 0; l < n; l++) {
          A.set(w(i, j), w(k, l), shear * (E1[i][k] * E[j][l] + E[i][k] * E1[j][l]));
          A.set(bx(i, j), bx(k, l), O1[i][k] * E[j][l] + twist * O[i][k] * E1[j][l] + shear * O[i][k] * E[j][l]);
          A.set(by(i, j), by(k, l), E[i][k] * O1[j][l] + twist * E1[i][k] * O[j][l] + shear * E[i][k] * O[j][l]);
          const coupled = nu * mixed.eo[k][i] * mixed.eo[j][l] + twist * mixed.oe[i][k] * mixed.oe[l][j];
          A.set(bx(i, j), by(k, l), coupled);
          A.set(by(k, l), bx(i, j), coupled);
          const slopeX = shear * mixed.oe[k][i] * E[j][l];
          const slopeY = shear * E[i][k] * mixed.oe[l][j];
          A.set(w(i, j), bx(k, l), slopeX);
          A.set(bx(k, l), w(i, j), slopeX);
          A.set(w(i, j), by(k, l), slopeY);
          A.set(by(k, l), w(i, j), slopeY);
        }
    }
  const c = solve(A, rhs).to1DArray();
  const middle = legendre(2 * terms, 0).filter((_, k) => k % 2 === 0);
  let sum = 0;
  for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) sum += c[w(i, j)] * middle[i][0] * middle[j][0];
  return sum / 16;
}
