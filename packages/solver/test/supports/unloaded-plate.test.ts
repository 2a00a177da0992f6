import { describe, expect, it } from 'vitest';
import type { PlateProblem } from '../../src/plate/plate-problem.ts';
import { solvePlate } from '../../src/solve-plate.ts';

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
});
