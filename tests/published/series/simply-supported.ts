/**
 * Simply supported rectangle with sides a along x and b along y about the origin, by Navier's double sine series
 * (Timoshenko and Woinowsky-Krieger, Art. 28) for any rigidity: `w = sum q_mn / stiffness(p, r) sin sin`.
 */
export interface SineRectangle {
  readonly a: number;
  readonly b: number;
  /** Pressure over deflection of the wave `sin p x sin r y`, N/mm3. */
  readonly stiffness: (p: number, r: number) => number;
}

export type SineLoad =
  | { readonly pressure: number; readonly sides: readonly [number, number] }
  | { readonly force: number; readonly at: readonly [number, number] };

/** Terms along each side: what is left out is below 1e-6 of the deflection. */
const TERMS = 1200;

/** Deflection at a point under a point load, or under pressure over a rectangle in the middle, mm. */
export function sineDeflection({ a, b, stiffness }: SineRectangle, load: SineLoad, at: readonly [number, number]) {
  const alongX = factors(load, 0, a, at[0]);
  const alongY = factors(load, 1, b, at[1]);
  const amount = (4 * ('force' in load ? load.force : load.pressure)) / (a * b);
  let w = 0;
  for (let m = 1; m <= TERMS; m++) {
    if (Math.abs(alongX[m]) < 1e-14) continue;
    for (let n = 1; n <= TERMS; n++)
      w += (amount * alongX[m] * alongY[n]) / stiffness((m * Math.PI) / a, (n * Math.PI) / b);
  }
  return w;
}

/** For each wave along a side: the load on it times its value where it is read. */
function factors(load: SineLoad, axis: 0 | 1, side: number, at: number): Float64Array {
  return Float64Array.from({ length: TERMS + 1 }, (_, m) => {
    const p = (m * Math.PI) / side;
    const read = Math.sin(p * (at + side / 2));
    if ('force' in load) return read * Math.sin(p * (load.at[axis] + side / 2));
    return p === 0 ? 0 : (read * 2 * Math.sin((p * side) / 2) * Math.sin((p * load.sides[axis]) / 2)) / p;
  });
}
