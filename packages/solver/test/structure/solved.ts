import type { PlateProblem } from '../../src/plate/plate-problem.ts';
import { advance, type PlateRequest, type PlateStages } from '../../src/structure/stages.ts';

/** 60 by 40 mm on three rigid points: every reaction follows from statics. */
export const onThree: PlateProblem = {
  plate: 1,
  outline: { rectangle: [60, 40] },
  section: { E: 66000, nu: 0.29, thickness: 4.5 },
  supports: [{ at: [-25, -15] }, { at: [25, -15] }, { at: [5, 16] }],
  theory: 'shear',
  mesh: { size: 8 },
};

export const requestOf = (problem: PlateProblem, rest: Partial<PlateRequest> = {}): PlateRequest => ({
  problems: [problem],
  areas: [],
  coarsening: 1,
  keepMesh: false,
  ...rest,
});

export function solved(problem: PlateProblem, rest: Partial<PlateRequest> = {}): PlateStages {
  return advance(null, requestOf(problem, rest));
}
