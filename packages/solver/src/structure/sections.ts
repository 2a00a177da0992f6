import type { PlateProblem } from '../plate/plate-problem.ts';
import { requireCommonMiddle } from '../section/common-middle.ts';
import { freeCurvature } from '../section/free-curvature.ts';
import type { Rigidity } from '../section/rigidity.ts';
import { rigidityOf } from '../section/rigidity-of.ts';
import type { Section } from '../section/section.ts';

/** Sections of a problem as triangles index them: the base section, then one for each region. */
export function sectionsOf({ section, regions = [] }: PlateProblem): readonly Section[] {
  return [section, ...regions.map((region) => region.section)];
}

function pathOf(index: number): string {
  return index === 0 ? 'section' : `regions.${index - 1}.section`;
}

/**
 * Rigidities of the sections of a problem.
 *
 * @throws Fault NOT_YET for sections bonded off a common mid-plane, OUT_OF_RANGE for rigidities that no plate has
 */
export function rigiditiesOf(problem: PlateProblem): Rigidity[] {
  const sections = sectionsOf(problem);
  requireCommonMiddle(sections, pathOf);
  return sections.map((section, i) => rigidityOf(section, pathOf(i)));
}

/**
 * Curvature that each section would take under the problem's temperature gradient if free, 1/mm; `undefined` without a
 * gradient.
 *
 * @throws Fault NOT_YET for a section whose thickness is not given
 */
export function freeCurvatures(problem: PlateProblem): Float64Array | undefined {
  const { temperature } = problem;
  if (temperature === undefined) return undefined;
  const { gradient, alpha } = temperature;
  return Float64Array.from(sectionsOf(problem), (section, i) => freeCurvature(section, gradient, alpha, pathOf(i)));
}
