import { bondedMiddle } from './bonded-layers.ts';
import { type HolePeaks, holePeaks } from './hole-concentration.ts';
import { isotropicBending } from './isotropic.ts';
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
  /** Strain in x and y that costs no stress, at each face. */
  readonly free: readonly [lower: number, upper: number];
  readonly holes: HolePeaks | null;
  /** Thickness that bends as one and spreads what presses on it: that of the layer, or of the bonded stack, mm. */
  readonly depth: number;
}

/**
 * Layers of a section in the order of the model. Sliding layers bend each about its own middle, bonded ones about that
 * of their stack.
 *
 * @param rigidity of the section
 * @param freeCurvature curvature of a solid section that costs no moment, 1/mm
 * @returns `null` for given rigidities, which say nothing of stress
 */
export function stressLayers(section: Section, { bending }: Rigidity, freeCurvature = 0): StressLayer[] | null {
  if ('layers' in section) {
    const bonded = section.join === 'bonded';
    const middle = bonded ? bondedMiddle(section.layers) : 0;
    const stack = section.layers.reduce((sum, { thickness }) => sum + thickness, 0);
    return section.layers.map(({ E, nu, thickness: t, bottom }: Layer) => ({
      stiffness: isotropicBending(E / (1 - nu * nu), nu),
      faces: bonded ? [bottom - middle, bottom + t - middle] : [-t / 2, t / 2],
      free: [0, 0],
      holes: null,
      depth: bonded ? stack : t,
    }));
  }
  if (!('thickness' in section)) return null;
  const { thickness: t, holes } = section;
  return [
    {
      stiffness: bending.map((D) => (12 * D) / t ** 3),
      faces: [-t / 2, t / 2],
      free: [(-freeCurvature * t) / 2, (freeCurvature * t) / 2],
      holes: holes === undefined ? null : holePeaks(holes),
      depth: t,
    },
  ];
}
