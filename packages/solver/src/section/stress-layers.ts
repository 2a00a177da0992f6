import { bondedLayers, bondedMiddle, heightOf } from './bonded-layers.ts';
import { freeStrain, type Temperature } from './free-strain.ts';
import type { HoleArray } from './hole-array.ts';
import { type HolePeaks, holePeaks } from './hole-concentration.ts';
import { isotropicBending } from './isotropic.ts';
import type { Membrane } from './membrane.ts';
import type { Rigidity } from './rigidity.ts';
import type { Layer, Section } from './section.ts';

/**
 * A layer of a section as its stress follows from the strain of the section: at height z above the plane that the
 * strain is given for, `sigma = Q (eps0 + z kappa - free)`, with strain `{exx, eyy, gxy}` and curvature
 * `{kxx, kyy, 2 kxy}`.
 */
export interface StressLayer {
  /** Plane-stress stiffness `[Q11, Q12, Q13, Q22, Q23, Q33]`, MPa; of the gross stress where drilled. */
  readonly stiffness: Float64Array;
  /** Heights z of lower and upper face, mm. */
  readonly faces: readonly [lower: number, upper: number];
  /** Heights of the faces above the middle of what the temperature is counted from, mm: see {@link freeFaces}. */
  readonly heights: { readonly own: readonly [number, number]; readonly plate: readonly [number, number] };
  /** The section it is a layer of. */
  readonly of: Section;
  /** 1/K; `null` where that of the temperature field counts. */
  readonly expansion: number | null;
  /** Whether it stretches by itself: then a uniform rise costs no stress. */
  readonly slides: boolean;
  readonly holes: HolePeaks | null;
  /** Thickness that bends as one and spreads what presses on it: that of the layer, or of the bonded stack, mm. */
  readonly depth: number;
}

/**
 * Layers of a section in the order of the model. Sliding layers bend each about its own middle; bonded ones about the
 * plane z = 0 where the plate stretches, else about their neutral surface.
 *
 * @param rigidity of the section
 * @param membrane of the section, where the plate stretches; its strain is that of z = 0
 * @returns `null` for given rigidities, which say nothing of stress
 */
export function stressLayers(
  section: Section,
  { bending }: Rigidity,
  membrane: Membrane | null = null,
): StressLayer[] | null {
  if ('layers' in section) {
    const bonded = section.join === 'bonded';
    const middle = bonded ? bondedMiddle(section.layers) : 0;
    const neutral = membrane !== null ? 0 : bonded ? neutralOf(section.layers) : 0;
    const stack = heightOf(section.layers);
    return section.layers.map(({ E, nu, thickness: t, bottom, expansion }: Layer): StressLayer => {
      const own: [number, number] = bonded ? [bottom - middle, bottom + t - middle] : [-t / 2, t / 2];
      return {
        stiffness: isotropicBending(E / (1 - nu * nu), nu),
        faces: bonded ? [bottom - neutral, bottom + t - neutral] : own,
        heights: { own, plate: bonded ? [bottom, bottom + t] : own },
        of: section,
        expansion: expansion ?? null,
        slides: !bonded,
        holes: null,
        depth: bonded ? stack : t,
      };
    });
  }
  if (!('thickness' in section)) return null;
  const { thickness: t, holes, expansion } = section;
  const faces: [number, number] = [-t / 2, t / 2];
  return [
    {
      stiffness: bending.map((D) => (12 * D) / t ** 3),
      faces,
      heights: { own: faces, plate: faces },
      of: section,
      expansion: expansion ?? null,
      slides: false,
      holes: holes === undefined ? null : holePeaks(widest(holes)),
      depth: t,
    },
  ];
}

/** An array with its holes as wide as their counterbores, where the peaks of stress are. */
function widest({ counterbore, ...holes }: HoleArray): HoleArray {
  return counterbore === undefined ? holes : { ...holes, diameter: counterbore.diameter };
}

/** Height of the neutral surface of bonded layers that have but one. */
function neutralOf(layers: readonly Layer[]): number {
  const { offset } = bondedLayers(layers, '').membrane;
  return offset[0] + offset[1];
}

/**
 * Strain that costs a layer no stress at its faces: `alpha (change + slope z)`.
 *
 * @param stretches whether the strain of the plate holds what the section stretches if free; else that is taken off here
 */
export function freeFaces(
  { heights, of, expansion, slides }: StressLayer,
  temperature: Temperature | null,
  stretches: boolean,
): [lower: number, upper: number] {
  if (temperature === null) return [0, 0];
  const { change, gradient, over, alpha } = temperature;
  const slope = gradient / (over ?? thicknessOf(of));
  const own = expansion ?? alpha;
  // What costs nothing as a whole: all of a sliding layer's rise, what a section takes that is not held.
  const whole = slides ? own * change : stretches ? 0 : (freeStrain(of, temperature, '').strain ?? 0);
  const at = (z: number) => own * (change + slope * z) - whole;
  const [lower, upper] = slides || over === null ? heights.own : heights.plate;
  return [at(lower), at(upper)];
}

function thicknessOf(section: Section): number {
  if ('layers' in section) return heightOf(section.layers);
  return 'thickness' in section ? section.thickness : 1;
}
