import { describe, expect, it } from 'vitest';
import { pointRow } from '../../src/assembly/rows.ts';
import { dotRow } from '../../src/linear-algebra/sparse-row.ts';
import type { PlateProblem } from '../../src/plate/plate-problem.ts';
import { influence } from '../../src/structure/influence.ts';
import { advance } from '../../src/structure/stages.ts';

const plate: PlateProblem = {
  plate: 1,
  outline: { rectangle: [60, 40] },
  section: { E: 66000, nu: 0.29, thickness: 4.5 },
  supports: [
    { at: [-25, -15], diameter: 4 },
    { at: [25, -15], diameter: 4, stiffness: 5e4 },
    { at: [0, 16], diameter: 4 },
  ],
  loads: [{ over: { rectangle: [20, 12], centre: [4, 1] }, force: 90 }],
  theory: 'shear',
  mesh: { size: 4 },
};

describe('influence field', () => {
  it.each([
    ['of a plate on fasteners', plate],
    [
      'of a plate with a held edge on a slant, on a foundation',
      {
        ...plate,
        outline: {
          polygon: [
            [-30, -20],
            [30, -12],
            [20, 20],
            [-30, 20],
          ] as [number, number][],
        },
        edges: [{ along: { from: [-30, -20] as [number, number], to: [30, -12] as [number, number] }, held: 'simple' }],
        supports: [{ at: [0, 16] as [number, number] }],
        foundations: [{ over: 'all', modulus: 2 }],
      } satisfies PlateProblem,
    ],
    [
      'of a plate that has left one of its supports',
      {
        ...plate,
        supports: [...plate.supports!, { at: [0, -18] as [number, number], acts: 'push' }],
      } satisfies PlateProblem,
    ],
  ])('%s is reciprocal, and gives what a load there moves (Betti)', (_, problem) => {
    const stages = advance(null, { problems: [problem], areas: [], coarsening: 1, keepMesh: false });
    const [solved] = stages.cases;
    const { mesh, locator } = stages.structure;
    const row = pointRow(mesh, locator, [7, -3], '');
    const z = influence(stages, solved, row);
    const other = pointRow(mesh, locator, [-11, 8], '');
    const back = influence(stages, solved, other);
    expect(dotRow(other, z)).toBeCloseTo(dotRow(row, back), 12);
    // The same by a solve of its own, with the supports that hold and no others.
    const force = 3;
    const pushed: PlateProblem = {
      ...problem,
      supports: problem.supports!.filter((_, i) => !solved.letGo.has(i)),
      loads: [{ at: [-11, 8], force }],
    };
    const again = advance(null, {
      problems: [pushed],
      areas: [],
      coarsening: 1,
      keepMesh: false,
      meshed: stages.meshed,
    });
    expect(dotRow(row, again.cases[0].u) / (force * dotRow(other, z))).toBeCloseTo(1, 9);
    expect(solved.letGo.size).toBe(problem.supports!.length - pushed.supports!.length);
  });
});
