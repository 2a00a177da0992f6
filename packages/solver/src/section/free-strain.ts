import { Fault } from '../fault/fault.ts';
import { bondedLayers, bondedMiddle, heightOf } from './bonded-layers.ts';
import type { Layer, Section } from './section.ts';

/** A temperature field, linear through the thickness. */
export interface Temperature {
  /** Rise of the middle, K. */
  readonly change: number;
  /** Temperature of the upper face less that of the lower, K. */
  readonly gradient: number;
  /**
   * Height that the gradient falls across, mm, the same slope in every section with its middle at z = 0; `null` = each
   * section's own thickness and middle.
   */
  readonly over: number | null;
  /** Thermal expansion of sections and layers that give none, 1/K. */
  readonly alpha: number;
}

/** What a section would do if free, the same in every direction and without force or moment. */
export interface FreeStrain {
  /** Strain of the neutral surface; `null` where layers slide, or nothing is known of the section's stretching. */
  readonly strain: number | null;
  /** 1/mm; positive domes the plate along +z. */
  readonly curvature: number;
}

/**
 * Strain and curvature that a free plate takes in a temperature field: a solid one `alpha dT` and `alpha dT / t`
 * (Timoshenko and Woinowsky-Krieger, Art. 14); bonded layers as a composite beam with their moduli E/(1 - nu), of which
 * two heated alike bend as Timoshenko (1925) found; sliding layers bend by the mean of their curvatures, weighted by
 * stiffness.
 *
 * @throws Fault NOT_YET for a gradient through a section whose thickness is not given
 */
export function freeStrain(section: Section, temperature: Temperature, path: string): FreeStrain {
  const { change, gradient, over, alpha } = temperature;
  if ('E' in section) {
    const expansion = section.expansion ?? alpha;
    return { strain: expansion * change, curvature: (expansion * gradient) / (over ?? section.thickness) };
  }
  if ('layers' in section)
    return section.join === 'bonded'
      ? bondedStrain(section.layers, temperature, path)
      : { strain: null, curvature: slidingCurvature(section.layers, temperature) };
  if (gradient === 0 || alpha === 0) return { strain: null, curvature: 0 };
  throw new Fault(
    'NOT_YET',
    `A temperature gradient needs the thickness it falls across, and ${path} gives none. Give it as E, nu and thickness or as layers, or leave out the gradient.`,
    path,
  );
}

/** Force and moment of the held layers over the stiffness: `N = sum m t a T`, `M = sum m a (t T z + s t^3/12)`, z from the neutral surface. */
function bondedStrain(layers: readonly Layer[], temperature: Temperature, path: string): FreeStrain {
  const { rigidity, membrane } = bondedLayers(layers, path);
  const { change, gradient, over, alpha } = temperature;
  const neutral = membrane.offset[0] + membrane.offset[1];
  const slope = gradient / (over ?? heightOf(layers));
  const level = over === null ? bondedMiddle(layers) : 0;
  let [force, moment] = [0, 0];
  for (const { E, nu, thickness: t, bottom, expansion = alpha } of layers) {
    const modulus = (E / (1 - nu)) * expansion;
    const middle = bottom + t / 2;
    const rise = change + slope * (middle - level);
    force += modulus * t * rise;
    moment += modulus * (t * rise * (middle - neutral) + (slope * t ** 3) / 12);
  }
  return {
    strain: force / (membrane.stretching[0] + membrane.stretching[1]),
    curvature: moment / (rigidity.bending[0] + rigidity.bending[1]),
  };
}

function slidingCurvature(layers: readonly Layer[], { gradient, over, alpha }: Temperature): number {
  const slope = gradient / (over ?? heightOf(layers));
  let [moment, stiffness] = [0, 0];
  for (const { E, nu, thickness, expansion = alpha } of layers) {
    const D = (E * thickness ** 3) / (1 - nu);
    moment += D * expansion * slope;
    stiffness += D;
  }
  return moment / stiffness;
}
