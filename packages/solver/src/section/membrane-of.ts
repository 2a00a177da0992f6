import { Fault } from '../fault/fault.ts';
import { bondedLayers } from './bonded-layers.ts';
import { drilledRigidity } from './drilled-rigidity.ts';
import { isotropicBending } from './isotropic.ts';
import { centredMembrane, type Membrane } from './membrane.ts';
import type { Section } from './section.ts';
import { holeLayers } from './stepped-holes.ts';

/**
 * How a section stretches about the plane z = 0, which is the middle of solid sections. Counterbored ones bend about a
 * neutral surface of their own all the same: see `steppedStiffness`.
 *
 * @param path of the section in the model, for messages
 * @throws Fault NOT_YET for given rigidities and sliding layers, whose stretching is not known
 */
export function membraneOf(section: Section, path: string): Membrane {
  if ('thickness' in section) {
    const { E, nu, thickness: t, holes } = section;
    if (holes === undefined) return centredMembrane(isotropicBending((E * t) / (1 - nu * nu), nu), 0);
    // Of one material all through each layer, in which A = 12 D / t^2.
    const layers = holeLayers(holes, t).map((layer) => {
      const { bending } = drilledRigidity({ E, nu, ...layer }, `${path}.holes`);
      return bending.map((D) => (12 * D) / layer.thickness ** 2);
    });
    return centredMembrane(
      layers[0].map((_, k) => layers.reduce((sum, layer) => sum + layer[k], 0)),
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
