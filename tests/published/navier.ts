import type { Point } from '@flathead/solver';

/** Simply supported rectangle about the origin, by Navier's double sine series. Independent of the solver. */
export interface NavierPlate {
  /** Sides along x and y, mm. */
  readonly a: number;
  readonly b: number;
  /** Rigidity, N mm. */
  readonly D: number;
  readonly nu: number;
  /** Transverse shear rigidity kappa G t, N/mm; infinite for a thin plate. */
  readonly S: number;
  /** Terms along each side. */
  readonly terms: number;
}

export type NavierLoad =
  | { readonly pressure: number; readonly centre: Point; readonly sides: Point }
  | { readonly force: number; readonly at: Point };

/** `[terms]` sin(m pi x / a), x from the left side. */
const sines = (terms: number, x: number, a: number): Float64Array =>
  Float64Array.from({ length: terms }, (_, m) => Math.sin(((m + 1) * Math.PI * x) / a));
const cosines = (terms: number, x: number, a: number): Float64Array =>
  Float64Array.from({ length: terms }, (_, m) => Math.cos(((m + 1) * Math.PI * x) / a));

/** `[terms]` integral of sin(m pi x / a) over a stretch. */
const stretches = (terms: number, centre: number, side: number, a: number): Float64Array =>
  Float64Array.from({ length: terms }, (_, i) => {
    const wave = ((i + 1) * Math.PI) / a;
    return (2 * Math.sin(wave * centre) * Math.sin((wave * side) / 2)) / wave;
  });

/** Coefficients q_mn of a load, `[terms * terms]`, MPa: `4/(a b) int q sin sin`. */
export function loadSeries({ a, b, terms }: NavierPlate, load: NavierLoad): Float64Array {
  const [x, y] = 'at' in load ? load.at : load.centre;
  const [amount, along, across] =
    'at' in load
      ? [load.force, sines(terms, x + a / 2, a), sines(terms, y + b / 2, b)]
      : [load.pressure, stretches(terms, x + a / 2, load.sides[0], a), stretches(terms, y + b / 2, load.sides[1], b)];
  return Float64Array.from({ length: terms * terms }, (_, k) => {
    const [m, n] = [Math.floor(k / terms), k % terms];
    return ((4 * amount) / (a * b)) * along[m] * across[n];
  });
}

/**
 * Deflection at a point, mm: `sum q_mn (1/(D l^2) + 1/(S l)) sin sin`, `l = (m pi/a)^2 + (n pi/b)^2`
 * (Timoshenko & Woinowsky-Krieger, Art. 28; the second term is Mindlin's for hard supports).
 */
export function deflection({ a, b, D, S, terms }: NavierPlate, load: Float64Array, [x, y]: Point): number {
  const [sx, sy] = [sines(terms, x + a / 2, a), sines(terms, y + b / 2, b)];
  let w = 0;
  for (let m = 0; m < terms; m++)
    for (let n = 0; n < terms; n++) {
      const l = (((m + 1) * Math.PI) / a) ** 2 + (((n + 1) * Math.PI) / b) ** 2;
      w += load[m * terms + n] * (1 / (D * l * l) + 1 / (S * l)) * sx[m] * sy[n];
    }
  return w;
}

/** `[mxx, myy, mxy]` at a point, N: shear adds nothing to them on hard supports. */
export function moments({ a, b, nu, terms }: NavierPlate, load: Float64Array, [x, y]: Point): [number, number, number] {
  const [sx, sy] = [sines(terms, x + a / 2, a), sines(terms, y + b / 2, b)];
  const [cx, cy] = [cosines(terms, x + a / 2, a), cosines(terms, y + b / 2, b)];
  let [mxx, myy, mxy] = [0, 0, 0];
  for (let m = 0; m < terms; m++)
    for (let n = 0; n < terms; n++) {
      const [p, r] = [((m + 1) * Math.PI) / a, ((n + 1) * Math.PI) / b];
      const bent = load[m * terms + n] / (p * p + r * r) ** 2;
      mxx += bent * (p * p + nu * r * r) * sx[m] * sy[n];
      myy += bent * (r * r + nu * p * p) * sx[m] * sy[n];
      mxy -= bent * (1 - nu) * p * r * cx[m] * cy[n];
    }
  return [mxx, myy, mxy];
}
