import { Matrix, solve } from 'ml-matrix';

export type Side = 'simple' | 'clamped' | 'free';

/** Odd waves along x; what is left out of a moment falls with the square of their number. */
const WAVES = 400;

/**
 * Rectangle of sides 1 along x and b along y about the origin under unit pressure, D = 1: its sides across x simply
 * supported, the one at y = -b/2 and the one at y = b/2 held as told. M. Levy's single series, each wave in closed form
 * (Timoshenko and Woinowsky-Krieger, Arts. 29 and 41 to 48):
 * `w = sum W_m(y) sin p x`, `W = q_m/p^4 + (A + B p y) e^(p (y - h)) + (C + E p y) e^(-p (y + h))`, h = b/2, p = m pi.
 */
export function levy(b: number, nu: number, sides: readonly [below: Side, above: Side], [x, y]: readonly number[]) {
  const h = b / 2;
  let [w, mxx, myy] = [0, 0, 0];
  for (let m = 1; m < 2 * WAVES; m += 2) {
    const p = m * Math.PI;
    const even = 4 / (p * p ** 4);
    /** Derivative d of the four terms over p^d. */
    const terms = (at: number, d: number): number[] => {
      const [up, down] = [Math.exp(p * (at - h)), Math.exp(-p * (at + h)) * (-1) ** d];
      return [up, (p * at + d) * up, down, (p * at - d) * down];
    };
    const combine = (at: number, parts: readonly (readonly [derivative: number, factor: number])[]) => ({
      row: terms(at, 0).map((_, k) => parts.reduce((sum, [d, factor]) => sum + factor * terms(at, d)[k], 0)),
      // The even part has no derivative.
      value: -even * parts.reduce((sum, [d, factor]) => sum + (d === 0 ? factor : 0), 0),
    });
    const moment = [
      [2, 1],
      [0, -nu],
    ] as const;
    const shear = [
      [3, 1],
      [1, nu - 2],
    ] as const;
    const held: Record<Side, readonly (readonly (readonly [number, number])[])[]> = {
      simple: [[[0, 1]], moment],
      clamped: [[[0, 1]], [[1, 1]]],
      free: [moment, shear],
    };
    const conditions = sides.flatMap((side, i) => held[side].map((parts) => combine(i === 0 ? -h : h, parts)));
    const c = solve(
      new Matrix(conditions.map(({ row }) => row)),
      Matrix.columnVector(conditions.map(({ value }) => value)),
    ).to1DArray();
    const W = (d: number) => terms(y, d).reduce((sum, term, k) => sum + c[k] * term, d === 0 ? even : 0);
    const wave = Math.sin(p * (x + 0.5));
    w += W(0) * wave;
    mxx += p * p * (W(0) - nu * W(2)) * wave;
    myy += p * p * (nu * W(0) - W(2)) * wave;
  }
  return { w, mxx, myy };
}
