import { bondedLayers, heightOf } from './bonded-layers.ts';
import type { Section } from './section.ts';

/** Difference of heights, relative to the thickness of the stack, that still counts as none. */
const LEVEL = 1e-9;

/**
 * Whether all sections of a plate bend about one plane, so that bending and stretching have nothing to do with each
 * other. A body and the same body with a frame bonded on one face do not.
 *
 * Heights of bonded layers count from the mid-plane of the sections that give none; where all are bonded, from any plane.
 * Sliding layers bend each about its own middle and are left out.
 *
 * @param pathOf path of the n-th section in the model, for messages
 */
export function haveCommonNeutral(sections: readonly Section[], pathOf: (index: number) => string): boolean {
  let common: number | null = null;
  for (const [index, section] of sections.entries()) {
    if ('layers' in section && section.join === 'sliding') continue;
    const [equal, sheared, thickness] = 'layers' in section ? neutrals(section.layers, pathOf(index)) : [0, 0, 0];
    common ??= equal;
    const tolerance = LEVEL * Math.max(thickness, Math.abs(common));
    if (Math.abs(equal - common) > tolerance || Math.abs(sheared - common) > tolerance) return false;
  }
  return true;
}

/** Neutral heights in the two ways that bonded layers strain, and the thickness of the stack. */
function neutrals(layers: Parameters<typeof bondedLayers>[0], path: string): [number, number, number] {
  const { offset } = bondedLayers(layers, path).membrane;
  return [offset[0] + offset[1], offset[8], heightOf(layers)];
}
