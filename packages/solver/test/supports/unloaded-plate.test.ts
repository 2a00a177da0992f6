import { describe, expect, it } from 'vitest';
import type { PlateProblem } from '../../src/plate/plate-problem.ts';
import { solvePlate } from '../../src/solve-plate.ts';
import { advance } from '../../src/structure/stages.ts';

const [alpha, gradient, thickness] = [1e-5, 20, 4];
/** A free plate that is warmer on one side bends to a sphere of this curvature without any stress. */
const curvature = (alpha * gradient) / thickness;
const corners = [
  [-25, -15],
  [25, -15],
  [25, 15],
  [-25, 15],
] as const;

const warm = (at: readonly (readonly [number, number])[], acts: 'push' | 'pull', sign = 1): PlateProblem => ({
  plate: 1,
  outline: { rectangle: [60, 40] },
  section: { E: 66000, nu: 0.29, thickness },
  supports: at.map(([x, y]) => ({ at: [x, y], acts })),
  temperature: { alpha, gradient: sign * gradient },
  mesh: { size: 4 },
  report: {
    at: [
      [0, 0],
      [25, 15],
    ],
  },
});

describe('a plate that is only warmed, on supports that act one way', () => {
  it.each([
    { name: 'on its corners', at: corners, acts: 'push', sign: 1 },
    { name: 'under its corners', at: corners, acts: 'pull', sign: -1 },
    { name: 'on its corners and clear of its middle', at: [...corners, [0, 0]], acts: 'push', sign: 1 },
    { name: 'on three', at: corners.slice(1), acts: 'push', sign: -1 },
  ] as const)('lies there without force, a sphere: $name', ({ at, acts, sign }) => {
    const { reactions, w } = solvePlate(warm(at, acts, sign));
    const rise = (curvature * (25 ** 2 + 15 ** 2)) / 2;
    // Locked flat it would press with some newtons.
    for (const reaction of reactions) expect(Math.abs(reaction)).toBeLessThan(1e-6);
    expect(Math.abs(w.at[0] - w.at[1])).toBeCloseTo(rise, 8);
  });

  it('tells how far it is from a support that has let go, and how far springs give way', () => {
    const problem = {
      ...warm([...corners, [0, 0]], 'push'),
      loads: [{ over: 'all' as const, pressure: -0.01 }],
    };
    problem.supports = problem.supports!.map((support, i) => ({
      ...support,
      stiffness: i < 4 ? 1000 : 1e-3 * 2 ** 20,
    }));
    const [{ seats, reactions, letGo, load }] = advance(null, {
      ...{ problems: [problem], areas: [], coarsening: 1, keepMesh: false },
    }).cases;
    expect(load).toBeCloseTo(-24, 9);
    expect(reactions.reduce((sum, force) => sum + force, 0)).toBeCloseTo(24, 9);
    expect([...letGo]).toEqual([4]);
    expect(reactions[4]).toBe(0);
    for (let i = 0; i < 4; i++) expect(seats[i]).toBeCloseTo(-reactions[i] / 1000, 12);
    // It lies clear of the middle one by its dome, less its sag.
    expect(seats[4]).toBeGreaterThan(0.005);
    expect(seats[4]).toBeCloseTo(solvePlate({ ...problem, report: { at: [[0, 0]] } }).w.at[0], 9);
  });
});
