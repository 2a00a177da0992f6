import { Fault } from '../fault/fault.ts';
import { type HoleArray, holeFraction, ligament } from './hole-array.ts';

/**
 * Effective constants of a plate full of holes over those of the solid plate, plane stress, for Poisson's ratio
 * {@link TABLE_NU}, at ligament efficiencies 0.2, 0.3 .. 0.6: `E` along a row of holes, `nu` from there across, and `G`.
 * A triangular array is isotropic, `G = E/(2 (1 + nu))`.
 *
 * Derived: periodic unit cell in quadratic finite elements, +-0.001.
 */
const TABLE = {
  square: {
    E: [0.3, 0.4069, 0.5117, 0.6168, 0.7224],
    nu: [0.1506, 0.1974, 0.2365, 0.2665, 0.2867],
    G: [0.0886, 0.1883, 0.3237, 0.4826, 0.6454],
  },
  triangular: {
    E: [0.1462, 0.2675, 0.3968, 0.5291, 0.6621],
    nu: [0.4888, 0.3841, 0.3374, 0.3194, 0.3118],
    G: null,
  },
} as const;
const TABLE_NU = 0.3;
const [LEAST, MOST, STEP] = [0.2, 0.6, 0.1];

/** Compliance along rows of holes times E of the solid: `S11 = S22`, `S12` and `S66 = E/G`. */
export interface CubicCompliance {
  readonly S11: number;
  readonly S12: number;
  readonly S66: number;
}

/**
 * Compliance in its plane of a plate with holes, times E of the solid, stress averaged over holes and material.
 *
 * Plane stress from the table: E* does not depend on nu of the solid, and `nu*(nu) = nu*(nu0) + (nu - nu0) E*`,
 * `1/G* = 1/G*(nu0) + 2 (nu - nu0)` for E = 1 (Cherkaev, Lurie and Milton 1992). Holes of a fine array are long, so that
 * the material between them keeps its strain along them: plane strain (E/(1 - nu^2) and nu/(1 - nu) for E and nu) with
 * the mean stress along the holes taken away again, `nu^2/(1 - phi)` on S11 and S12.
 *
 * @param nu Poisson's ratio of the solid
 * @throws Fault OUT_OF_RANGE outside of the table
 */
export function drilledCompliance(holes: HoleArray, nu: number, path: string): CubicCompliance {
  const mu = requireTabulated(holes, path);
  const table = TABLE[holes.pattern];
  const E = interpolate(table.E, mu);
  const strainNu = nu / (1 - nu);
  const acrossNu = (at: number) => interpolate(table.nu, mu) + (at - TABLE_NU) * E;
  const perShear =
    table.G === null
      ? (2 * (1 + acrossNu(strainNu))) / E
      : (2 * (1 + TABLE_NU)) / interpolate(table.G, mu) + 2 * (strainNu - TABLE_NU);
  const along = nu ** 2 / (1 - holeFraction(holes));
  return {
    S11: (1 - nu ** 2) / E + along,
    S12: (-(1 - nu ** 2) * acrossNu(strainNu)) / E + along,
    S66: (1 - nu ** 2) * perShear,
  };
}

/**
 * Ligament efficiency of an array that the table covers.
 *
 * @throws Fault OUT_OF_RANGE
 */
export function requireTabulated(holes: HoleArray, path: string): number {
  const mu = ligament(holes);
  // Rounding of pitch and diameter.
  if (mu >= LEAST - 1e-9 && mu <= MOST + 1e-9) return mu;
  const { pitch, diameter } = holes;
  const [smallest, largest] = [(1 - MOST) * pitch, (1 - LEAST) * pitch].map((limit) => limit.toPrecision(3));
  throw new Fault(
    'OUT_OF_RANGE',
    `Holes of ${diameter} mm at a pitch of ${pitch} mm leave ${(100 * mu).toFixed(0)} % of it as ligament; effective constants are known from ${100 * LEAST} to ${100 * MOST} %. Use a diameter of ${smallest} to ${largest} mm, or leave out the holes and lower E of the material yourself.`,
    `${path}.diameter`,
    { value: diameter, expected: `${smallest} to ${largest} mm` },
  );
}

/** Value at mu of the quartic through a column of the table (Lagrange). */
function interpolate(column: readonly number[], mu: number): number {
  const at = (mu - LEAST) / STEP;
  return column.reduce((sum, value, i) => {
    let weight = 1;
    for (let j = 0; j < column.length; j++) if (j !== i) weight *= (at - j) / (i - j);
    return sum + weight * value;
  }, 0);
}
