import { drilledCompliance } from './drilled.ts';
import { type HoleArray, holeFraction } from './hole-array.ts';
import { SHEAR_CORRECTION, shearModulus } from './isotropic.ts';
import type { Rigidity } from './rigidity.ts';
import { type DrilledStiffness, steppedStiffness } from './stepped-holes.ts';

/** A solid plate full of holes. */
interface DrilledPlate {
  readonly E: number;
  readonly nu: number;
  readonly thickness: number;
  readonly holes: HoleArray;
}

/**
 * Bending and transverse shear stiffness of a drilled plate, its rows of holes turned by `holes.angle`. Shear modulus
 * across the plate: `G (1 - phi)/(1 + phi)` (Hashin; from memory).
 *
 * @throws Fault OUT_OF_RANGE when the ligament efficiency is outside of the table, or a counterbore makes no sense
 */
export function drilledRigidity(plate: DrilledPlate, path: string): Rigidity {
  const { holes } = plate;
  const { Q11, Q12, Q33, shear } =
    holes.counterbore === undefined ? straightStiffness(plate, path) : steppedStiffness(plate, path);
  // A cubic stiffness turned by an angle: its anisotropy goes with sin^2 2a and sin 4a.
  const anisotropy = Q11 - Q12 - 2 * Q33;
  const angle = ((holes.angle ?? 0) * Math.PI) / 180;
  const turn = (anisotropy / 2) * Math.sin(2 * angle) ** 2;
  const skew = (anisotropy / 4) * Math.sin(4 * angle);
  return {
    bending: Float64Array.of(Q11 - turn, Q12 + turn, skew, Q11 - turn, -skew, Q33 + turn),
    shear: Float64Array.of(shear, 0, shear),
  };
}

function straightStiffness({ E, nu, thickness, holes }: DrilledPlate, path: string): DrilledStiffness {
  const { S11, S12, S66 } = drilledCompliance(holes, nu, path);
  const scale = (E * thickness ** 3) / 12;
  const phi = holeFraction(holes);
  return {
    Q11: (scale * S11) / (S11 ** 2 - S12 ** 2),
    Q12: (-scale * S12) / (S11 ** 2 - S12 ** 2),
    Q33: scale / S66,
    shear: (SHEAR_CORRECTION * thickness * shearModulus(E, nu) * (1 - phi)) / (1 + phi),
  };
}
