import { Fault } from '../fault/fault.ts';
import { bondedLayers } from './bonded-layers.ts';
import { drilledRigidity } from './drilled-rigidity.ts';
import { isotropicBending, SHEAR_CORRECTION, shearModulus } from './isotropic.ts';
import type { Rigidity } from './rigidity.ts';
import type { Layer, Section } from './section.ts';

/**
 * Bending and transverse shear stiffness of a section.
 *
 * Given rigidities follow Timoshenko and Woinowsky-Krieger, Art. 85, whose twisting moment is `2 Dxy w,xy`: hence
 * `mxy = Dxy (2 kxy)`, `D33 = Dxy`, and the mixed coefficient of their plate equation is `H = D1 + 2 Dxy`. They say
 * nothing of shear: `shear` is `null` then.
 *
 * Sliding layers bend each about its own middle; bonded ones together about their neutral surface.
 *
 * @param path of the section in the model, for messages
 * @throws Fault OUT_OF_RANGE when the section is not positive definite or its holes are outside of the known range;
 *   OVERLAP when bonded layers share a height
 */
export function rigidityOf(section: Section, path: string): Rigidity {
  if ('layers' in section)
    return section.join === 'sliding' ? slidingLayers(section.layers) : bondedLayers(section.layers, path).rigidity;
  if ('thickness' in section) {
    const { holes } = section;
    return holes === undefined ? slidingLayers([section]) : drilledRigidity({ ...section, holes }, `${path}.holes`);
  }
  if ('D' in section) return { bending: isotropicBending(section.D, section.nu), shear: null };

  const { Dx, Dy, D1, Dxy } = section;
  if (!(Dx * Dy > D1 * D1))
    throw new Fault(
      'OUT_OF_RANGE',
      `The section of ${path} has no positive stiffness: D1 = ${D1} N mm, but D1^2 must be less than Dx Dy = ${Dx * Dy}. Lower D1 below ${Math.sqrt(Dx * Dy).toPrecision(4)}.`,
      `${path}.D1`,
      { Dx, Dy, D1 },
    );
  return { bending: Float64Array.of(Dx, D1, 0, Dy, 0, Dxy), shear: null };
}

/** Sum of the layers' own stiffness. */
function slidingLayers(layers: readonly Omit<Layer, 'bottom'>[]): Rigidity {
  const bending = new Float64Array(6);
  let shear = 0;
  for (const { E, nu, thickness } of layers) {
    const own = isotropicBending((E * thickness ** 3) / (12 * (1 - nu * nu)), nu);
    for (let c = 0; c < 6; c++) bending[c] += own[c];
    shear += SHEAR_CORRECTION * shearModulus(E, nu) * thickness;
  }
  return { bending, shear: Float64Array.of(shear, 0, shear) };
}
