import { type HoleArray, ligament } from './hole-array.ts';

/**
 * Largest tension at the edge of a hole over the gross stress (averaged over holes and ligaments), in columns for gross
 * stress {xx, yy} along and across the rows of (1, 1), (1, 0), (0, 1), (1, -1), (-1, 1), (-1, 0), (0, -1) and for shear
 * along the rows, at ligament efficiencies 0.2, 0.3 .. 0.6. Equal compression all round leaves no tension.
 *
 * Derived: periodic unit cell in quadratic finite elements, +-0.5 %. Stress that averages to a given gross stress does not
 * depend on the elastic constants, nor on plane stress or strain.
 */
const TABLE: Readonly<Record<HoleArray['pattern'], readonly (readonly number[])[]>> = {
  square: [
    [5.756, 5.777, 5.777, 5.798, 5.798, 0.26, 0.26, 17.689],
    [4.071, 4.263, 4.263, 4.455, 4.455, 0.27, 0.27, 10.816],
    [3.19, 3.608, 3.608, 4.026, 4.026, 0.419, 0.419, 8.3],
    [2.669, 3.278, 3.278, 3.887, 3.887, 0.609, 0.609, 6.667],
    [2.357, 3.108, 3.108, 3.86, 3.86, 0.752, 0.752, 5.556],
  ],
  triangular: [
    [5.713, 11.745, 8.15, 19.582, 11.88, 3.813, 7.851, 17.77],
    [3.96, 7.682, 4.699, 12.113, 6.119, 1.424, 4.431, 10.496],
    [3.095, 5.59, 3.65, 8.334, 4.384, 0.748, 2.744, 7.248],
    [2.624, 4.407, 3.427, 6.265, 4.231, 0.804, 1.858, 5.587],
    [2.348, 3.723, 3.309, 5.115, 4.27, 0.961, 1.392, 4.764],
  ],
};
const [LEAST, STEP] = [0.2, 0.1];

/** Hole-edge tension of one array, ready for many gross stresses. */
export interface HolePeaks {
  /** `[8]` as the columns of the table. */
  readonly factors: Float64Array;
  /** Cosine and sine of the angle from x to the rows. */
  readonly cos: number;
  readonly sin: number;
}

/**
 * Factors of an array. Between the entries of the table, factor times ligament efficiency is linear: within 4 %. Outside
 * of it, which no section may be, the nearest end stands, scaled by the ligament below.
 */
export function holePeaks(holes: HoleArray): HolePeaks {
  const mu = ligament(holes);
  const rows = TABLE[holes.pattern];
  const place = Math.min(rows.length - 1, Math.max(0, (mu - LEAST) / STEP));
  const low = Math.min(rows.length - 2, Math.floor(place));
  const factors = Float64Array.from(rows[low], (factor, column) => {
    const net = (row: number, value: number) => (LEAST + STEP * row) * value;
    const from = net(low, factor);
    const mean = from + (place - low) * (net(low + 1, rows[low + 1][column]) - from);
    return mean / Math.min(mu, LEAST + STEP * (rows.length - 1));
  });
  const angle = ((holes.angle ?? 0) * Math.PI) / 180;
  return { factors, cos: Math.cos(angle), sin: Math.sin(angle) };
}

/**
 * Largest tension at the edge of a hole under a gross stress in global axes, MPa; an upper estimate.
 *
 * The peak is the largest of many linear functions of the gross stress, hence `peak(a + b) <= peak(a) + peak(b)`: the
 * stress is split into the two tabulated ones on either side of it and shear, and their peaks added.
 */
export function peakTension({ factors, cos, sin }: HolePeaks, sxx: number, syy: number, sxy: number): number {
  const turned = 2 * sxy * cos * sin;
  const along = sxx * cos * cos + syy * sin * sin + turned;
  const across = sxx * sin * sin + syy * cos * cos - turned;
  const shear = (syy - sxx) * cos * sin + sxy * (cos * cos - sin * sin);
  const a = Math.abs(along);
  const b = Math.abs(across);
  const least = Math.min(a, b);
  let diagonal = 0;
  if (along > 0) diagonal = across > 0 ? factors[0] : factors[3];
  else if (across > 0) diagonal = factors[4];
  const alongOnly = along > 0 ? factors[1] : factors[5];
  const acrossOnly = across > 0 ? factors[2] : factors[6];
  return least * diagonal + (a - least) * alongOnly + (b - least) * acrossOnly + Math.abs(shear) * factors[7];
}
