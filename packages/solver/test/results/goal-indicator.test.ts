import { describe, expect, it } from 'vitest';
import { pointRow } from '../../src/assembly/rows.ts';
import type { PlateProblem } from '../../src/plate/plate-problem.ts';
import { goalIndicator } from '../../src/results/goal-indicator.ts';
import { gradedSizes } from '../../src/results/graded-sizes.ts';
import { influence } from '../../src/structure/influence.ts';
import { advance } from '../../src/structure/stages.ts';

const square = (size: number): PlateProblem => ({
  plate: 1,
  outline: { rectangle: [40, 40] },
  section: { E: 2e5, nu: 0.3, thickness: 1 },
  edges: [{ along: 'all', held: 'clamped' }],
  loads: [{ over: 'all', pressure: 0.01 }],
  mesh: { size },
});

function indicated(problem: PlateProblem, at: [number, number]) {
  const stages = advance(null, { problems: [problem], areas: [], coarsening: 1, keepMesh: false });
  const { mesh, locator } = stages.structure;
  const z = influence(stages, stages.cases[0], pointRow(mesh, locator, at, ''));
  return { stages, mesh, eta: goalIndicator(stages.structure, stages.cases[0].u, z) };
}
const sum = (values: Float64Array) => values.reduce((total, v) => total + v, 0);

describe('goal indicator', () => {
  it('vanishes where moments are constant', () => {
    const { stages, mesh } = indicated(square(4), [0, 0]);
    const bent = Float64Array.from({ length: 3 * mesh.x.length }, (_, p) => {
      const [x, y] = [mesh.x[Math.floor(p / 3)], mesh.y[Math.floor(p / 3)]];
      return [(x * x + x * y) / 2, x / 2, -x - y / 2][p % 3];
    });
    expect(sum(goalIndicator(stages.structure, bent, stages.cases[0].u))).toBeLessThan(1e-9);
    expect(sum(goalIndicator(stages.structure, stages.cases[0].u, stages.cases[0].u))).toBeGreaterThan(1e-5);
  });

  it('adds up to what falls with the square of the element size, as the error does', () => {
    const [coarse, fine] = [2.4, 1.2].map((size) => sum(indicated(square(size), [0, 0]).eta));
    expect(Math.log2(coarse / fine)).toBeGreaterThan(1.6);
    expect(Math.log2(coarse / fine)).toBeLessThan(2.4);
  });

  it('is largest where the plate turns a corner', () => {
    const ell: PlateProblem = {
      ...square(2),
      outline: {
        polygon: [
          [-20, -20],
          [20, -20],
          [20, 0],
          [0, 0],
          [0, 20],
          [-20, 20],
        ],
      },
    };
    const { mesh, eta } = indicated(ell, [-8, -8]);
    const most = eta.indexOf(Math.max(...eta));
    const corners = [0, 1, 2].map((c) => mesh.triangles[3 * most + c]);
    expect(Math.min(...corners.map((i) => Math.hypot(mesh.x[i], mesh.y[i])))).toBe(0);
  });
});

describe('graded sizes', () => {
  const { mesh } = indicated(square(2), [0, 0]);
  const area = Float64Array.from({ length: mesh.region.length }, (_, t) => {
    const [a, b, c] = [0, 1, 2].map((k) => mesh.triangles[3 * t + k]);
    return ((mesh.x[b] - mesh.x[a]) * (mesh.y[c] - mesh.y[a]) - (mesh.x[c] - mesh.x[a]) * (mesh.y[b] - mesh.y[a])) / 2;
  });

  it('all shrink by the root of the ratio where every element adds alike for its size', () => {
    // eta = c A h^2 with the same c everywhere.
    const sizes = gradedSizes(
      mesh,
      area.map((A) => A * A),
      0.25,
    );
    const own = area.map((A) => Math.sqrt((4 * A) / Math.sqrt(3)));
    const mean = (values: Float64Array) => sum(values) / values.length;
    expect(mean(sizes) / mean(own)).toBeCloseTo(0.5, 1);
  });

  it('go with c^(-1/4)', () => {
    const right = (t: number) => [0, 1, 2].every((k) => mesh.x[mesh.triangles[3 * t + k]] > 2);
    const left = (t: number) => [0, 1, 2].every((k) => mesh.x[mesh.triangles[3 * t + k]] < -2);
    const c = area.map((_, t) => (right(t) ? 16 : 1));
    const sizes = gradedSizes(
      mesh,
      area.map((A, t) => (c[t] * A * A * 4) / Math.sqrt(3)),
      0.5,
    );
    const at = (side: (t: number) => boolean) => sizes[mesh.triangles[3 * c.findIndex((_, t) => side(t))]];
    expect(at(left) / at(right)).toBeCloseTo(2, 9);
  });
});
