import type { PlateProblem } from '../plate/plate-problem.ts';
import { haveCommonNeutral } from '../section/common-neutral.ts';
import { type FreeStrain, freeStrain, type Temperature } from '../section/free-strain.ts';
import type { Membrane } from '../section/membrane.ts';
import { membraneOf } from '../section/membrane-of.ts';
import type { Rigidity } from '../section/rigidity.ts';
import { rigidityOf } from '../section/rigidity-of.ts';
import type { Section } from '../section/section.ts';

/** Relative difference of free strains that is rounding. */
const SAME = 1e-12;

/** Sections of a problem as triangles index them: the base section, then one for each region. */
export function sectionsOf({ section, regions = [] }: PlateProblem): readonly Section[] {
  return [section, ...regions.map((region) => region.section)];
}

function pathOf(index: number): string {
  return index === 0 ? 'section' : `regions.${index - 1}.section`;
}

/** Rigidities of the sections of a problem. @throws Fault OUT_OF_RANGE for rigidities that no plate has */
export function rigiditiesOf(problem: PlateProblem): Rigidity[] {
  return sectionsOf(problem).map((section, i) => rigidityOf(section, pathOf(i)));
}

/** How the sections of a problem stretch. @throws Fault NOT_YET for a section of which that is not known */
export function membranesOf(problem: PlateProblem): Membrane[] {
  return sectionsOf(problem).map((section, i) => membraneOf(section, pathOf(i)));
}

/** What each section would do in the problem's temperature if free; `null` without one. @throws Fault NOT_YET */
export function freeStrainsOf(problem: PlateProblem): FreeStrain[] | null {
  const temperature = temperatureOf(problem);
  if (temperature === null) return null;
  return sectionsOf(problem).map((section, i) => freeStrain(section, temperature, pathOf(i)));
}

/**
 * Whether a plate stretches where it bends or where it is heated, so that in-plane displacements come into play: its
 * sections have neutral surfaces of their own, or would expand differently and hold each other.
 */
export function isCoupled(problem: PlateProblem): boolean {
  if (!haveCommonNeutral(sectionsOf(problem), pathOf)) return true;
  // Layers that slide on each other restrain nothing in the plane.
  const strains = freeStrainsOf(problem)?.map(({ strain }) => strain) ?? [];
  if (!strains.every((strain) => strain !== null)) return false;
  const [least, most] = [Math.min(...strains), Math.max(...strains)];
  return most - least > SAME * Math.max(Math.abs(least), Math.abs(most));
}

/** The temperature field of a problem, `null` without one. */
export function temperatureOf({ temperature }: PlateProblem): Temperature | null {
  if (temperature === undefined) return null;
  const { change = 0, gradient = 0, over = null, alpha = 0 } = temperature;
  return { change, gradient, over, alpha };
}
