import { Fault } from '../fault/fault.ts';
import type { Section } from './section.ts';

/**
 * Curvature that a free plate takes under a temperature gradient through its thickness, `alpha dT / t`, the same in
 * every direction and without stress (Timoshenko and Woinowsky-Krieger, Art. 14).
 *
 * @param gradient temperature of the upper face less that of the lower, K
 * @param alpha thermal expansion, 1/K
 * @returns 1/mm; positive domes the plate along +z
 * @throws Fault NOT_YET for a section whose thickness is not given
 */
export function freeCurvature(section: Section, gradient: number, alpha: number, path: string): number {
  if (gradient === 0 || alpha === 0) return 0;
  if ('E' in section) return (alpha * gradient) / section.thickness;
  throw new Fault(
    'NOT_YET',
    `A temperature gradient needs the thickness it falls across, and ${path} is not one solid layer. Give it as E, nu and thickness, or leave out the gradient.`,
    path,
  );
}
