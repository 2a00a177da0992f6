import { Fault } from '../fault/fault.ts';
import { bondedLayers } from './bonded-layers.ts';
import { drilledRigidity } from './drilled.ts';
import { isotropicBending } from './isotropic.ts';
import { centredMembrane, type Membrane } from './membrane.ts';
import type { Section } from './section.ts';

/**
 * How a section stretches about the plane z = 0, which is the middle of solid sections.
 *
 * @param path of the section in the model, for messages
 * @throws Fault NOT_YET for given rigidities and sliding layers, whose stretching is not known
 */
export function membraneOf(section: Section, path: string): Membrane {
  if ('thickness' in section) {
    const { E, nu, thickness: t, holes } = section;
    if (holes === undefined) return centredMembrane(isotropicBending((E * t) / (1 - nu * nu), nu), 0);
    // Of one material all through: A = 12 D / t^2.
    const { bending } = drilledRigidity({ ...section, holes }, `${path}.holes`);
    return centredMembrane(
      bending.map((D) => (12 * D) / t ** 2),
      0,
    );
  }
  if ('layers' in section && section.join === 'bonded') return bondedLayers(section.layers, path).membrane;
  const what = 'layers' in section ? 'layers that slide on each other' : 'rigidities in bending only';
  throw new Fault(
    'NOT_YET',
    `The section of ${path} gives ${what}, but other parts of this plate are bonded off its mid-plane, so that it stretches where it bends. Give ${path} as one solid or as bonded layers.`,
    path,
  );
}
