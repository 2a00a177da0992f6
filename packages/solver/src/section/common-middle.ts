import { Fault } from '../fault/fault.ts';
import { bondedMiddle } from './bonded-layers.ts';
import type { Section } from './section.ts';

/** Difference of heights, relative to the thickness of the stack, that still counts as none. */
const LEVEL = 1e-9;

/**
 * Makes sure that the sections of one plate bend about one plane. Next to each other, two sections with different
 * mid-planes couple bending and stretching even if each is symmetric, such as a body and the same body with a frame of
 * its own material bonded on.
 *
 * Heights of bonded layers count from the mid-plane of the sections that give none; where all are bonded, from any plane.
 * Sliding layers bend each about its own middle and are left out.
 *
 * @param pathOf path of the n-th section in the model, for messages
 * @throws Fault NOT_YET
 */
export function requireCommonMiddle(sections: readonly Section[], pathOf: (index: number) => string): void {
  let first: { middle: number; path: string } | null = null;
  for (const [index, section] of sections.entries()) {
    const bonded = 'layers' in section && section.join === 'bonded';
    if ('layers' in section && !bonded) continue;
    const here = { middle: bonded ? bondedMiddle(section.layers) : 0, path: pathOf(index) };
    first ??= here;
    const thickness = bonded ? section.layers.reduce((sum, layer) => sum + layer.thickness, 0) : 0;
    if (Math.abs(here.middle - first.middle) <= LEVEL * Math.max(thickness, Math.abs(first.middle))) continue;
    throw new Fault(
      'NOT_YET',
      `The mid-plane of ${here.path} lies at z = ${here.middle} mm, that of ${first.path} at z = ${first.middle} mm; parts bonded off a common mid-plane are not supported yet. Join them "sliding", or set the frame level.`,
      here.path,
      { middle: here.middle, expected: first.middle },
    );
  }
}
