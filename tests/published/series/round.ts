import { Matrix, solve } from 'ml-matrix';

/** A term of a deflection of harmonic m and its radial derivatives: value, first, second, third. */
type Radial = readonly [number, number, number, number];

/** `r^n` and its derivatives. */
const power = (r: number, n: number): Radial => [
  r ** n,
  n * r ** (n - 1),
  n * (n - 1) * r ** (n - 2),
  n * (n - 1) * (n - 2) * r ** (n - 3),
];
const logarithm = (r: number): Radial => [Math.log(r), 1 / r, -1 / r ** 2, 2 / r ** 3];
const squareLogarithm = (r: number): Radial => {
  const l = Math.log(r);
  return [r * r * l, r * (2 * l + 1), 2 * l + 3, 2 / r];
};

/** `-M_r / D` of a term of harmonic m. */
const moment = ([w, d, dd]: Radial, r: number, m: number, nu: number): number =>
  dd + nu * (d / r - (m * m * w) / r ** 2);
/** `-V_r / D`, the shear with the twist along the edge. */
const shear = ([w, d, dd, ddd]: Radial, r: number, m: number, nu: number): number =>
  ddd + dd / r - d / r ** 2 - m * m * (d / r ** 2 - (2 * w) / r ** 3) - (((1 - nu) * m * m) / r ** 2) * (d - w / r);

function solved(rows: number[][], rhs: number[]): number[] {
  return solve(new Matrix(rows), Matrix.columnVector(rhs)).to1DArray();
}

/** Harmonics of the ring of supports; what is left out falls with the cube of their number. */
const HARMONICS = 4000;

/**
 * Middle of a free circular plate of radius 1 on evenly spaced rigid points on a circle of radius c < 1, under unit
 * pressure, over `q R^4 / D` (Nadai 1922 for points on the rim). The supports are a ring load
 * `-(pi / (2 pi c)) (1 + 2 sum cos m theta)`, m = N, 2 N ..; each harmonic is `r^m, r^(m+2)` inside the ring and
 * `r^m, r^(m+2), r^-m, r^(2-m)` outside, joined at the ring, with a free rim.
 */
export function discOnPoints(points: number, c: number, nu: number): number {
  const line = -1 / (2 * c);
  // Axisymmetric: q r^4 / 64 everywhere; inside A + B r^2, outside A + B r^2 + C ln r + E r^2 ln r; w = 0 at the ring.
  const [one, square, log, squareLog, load] = [power(c, 0), power(c, 2), logarithm(c), squareLogarithm(c), power(c, 4)];
  const jump = [0, 1, 2, 3].map((d) => [-one[d], -square[d], one[d], square[d], log[d], squareLog[d]]);
  const rim = [power(1, 0), power(1, 2), logarithm(1), squareLogarithm(1)].map((term) => moment(term, 1, 0, nu));
  const [middle] = solved(
    [...jump, [0, 0, ...rim], [one[0], square[0], 0, 0, 0, 0]],
    [0, 0, 0, line, -moment(power(1, 4), 1, 0, nu) / 64, -load[0] / 64],
  );
  let atSupport = 0;
  for (let m = points; m <= HARMONICS; m += points) {
    // In powers of r/c for the ring load in an endless plate, in powers of r for what the free rim adds.
    const [inner, outer] = [
      [m, m + 2],
      [-m, 2 - m],
    ].map((exponents) => exponents.map((n) => power(1, n)));
    const [, , C, E] = solved(
      [0, 1, 2, 3].map((d) => [-inner[0][d], -inner[1][d], outer[0][d], outer[1][d]]),
      [0, 0, 0, 2 * line * c ** 3],
    );
    const ring = C + E;
    // The rim, where those of the ring are (1/c)^-m and so on.
    const far = [-m, 2 - m].map((n, k) => power(1, n).map((v) => v * c ** -n * [C, E][k]) as unknown as Radial);
    const near = [power(1, m), power(1, m + 2)];
    const [A, B] = solved(
      [near.map((term) => moment(term, 1, m, nu)), near.map((term) => shear(term, 1, m, nu))],
      [
        -far.reduce((sum, term) => sum + moment(term, 1, m, nu), 0),
        -far.reduce((sum, term) => sum + shear(term, 1, m, nu), 0),
      ],
    );
    atSupport += ring + A * c ** m + B * c ** (m + 2);
  }
  return middle - atSupport;
}

/**
 * Ring of outer radius 1 and inner radius b held alike at both edges under unit pressure: its largest deflection over
 * `q R^4 / D` and the radius where it stands. `w = r^4/64 + A + B r^2 + C ln r + E r^2 ln r` with the four conditions of
 * the edges (Timoshenko and Woinowsky-Krieger, Art. 17).
 */
export function heldRing(
  b: number,
  held: 'simple' | 'clamped',
  nu: number,
): { readonly w: number; readonly at: number } {
  const terms = (r: number) => [power(r, 0), power(r, 2), logarithm(r), squareLogarithm(r)];
  const conditions = [1, b].flatMap((r) => {
    const second = (term: Radial) => (held === 'clamped' ? term[1] : moment(term, r, 0, nu));
    return [([w]: Radial) => w, second].map((f) => ({ row: terms(r).map(f), load: f(power(r, 4)) / 64 }));
  });
  const c = solved(
    conditions.map(({ row }) => row),
    conditions.map(({ load }) => -load),
  );
  const field = (r: number, d: 0 | 1) =>
    power(r, 4)[d] / 64 + terms(r).reduce((sum, term, k) => sum + c[k] * term[d], 0);
  let [low, high] = [b + 0.05 * (1 - b), 1 - 0.05 * (1 - b)];
  for (let step = 0; step < 60; step++) {
    const r = (low + high) / 2;
    if (field(r, 1) > 0) low = r;
    else high = r;
  }
  return { w: field(low, 0), at: low };
}
