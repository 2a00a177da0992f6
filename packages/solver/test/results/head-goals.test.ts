import { describe, expect, it } from 'vitest';
import type { SparseRow } from '../../src/linear-algebra/block-matrix.ts';
import { headGoals, unsettled } from '../../src/results/head-goals.ts';
import type { CriterionVerdict } from '../../src/results/head-result.ts';
import { solveHead } from '../../src/solve-head.ts';
import { twoByTwo } from '../model/two-by-two.ts';

const model = { ...twoByTwo, limits: { bow: 0.03, flatness: 0.03 } };
const { result, stages } = solveHead(model, { quality: 'live' });
const { areas, main } = stages;
const [solved] = main.cases;
const [measured] = result.cases;
const judged = (criterion: 'bow' | 'flatness', error: number): CriterionVerdict => ({
  ...result.verdict.criteria.find((verdict) => verdict.criterion === criterion)!,
  error,
});
const goals = (verdict: CriterionVerdict, tolerance = 0.01) =>
  headGoals(main.cases, result.cases, areas, [verdict], tolerance);
const read = ({ dof, value }: SparseRow, u: Float64Array) => dof.reduce((sum, at, k) => sum + value[k] * u[at], 0);

/** w = 0.3 + 0.01 x - 0.02 y with its rotations thetaX = w,y and thetaY = -w,x. */
const { mesh } = solved.structure;
const plane = Float64Array.from(
  [...mesh.x.keys()].flatMap((i) => [0.3 + 0.01 * mesh.x[i] - 0.02 * mesh.y[i], -0.02, -0.01]),
);

describe('what the mesh of a head is refined for', () => {
  it('reads the bow at the sites, and nothing of a head that only moves and tilts', () => {
    const [first, ...others] = goals(judged('bow', 1e-3));
    expect(others.length).toBe(3);
    expect(Math.abs(read(first.row, solved.solution.u))).toBeCloseTo(Math.abs(measured.bow.value), 9);
    for (const { row } of [first, ...others]) expect(Math.abs(read(row, plane))).toBeLessThan(1e-12);
  });

  it('reads the peak over the valley about the least-squares plane of the nodes', () => {
    const [{ row }, ...others] = goals(judged('flatness', 1e-3));
    expect(others).toEqual([]);
    // Normal equations of the plane, solved here by elimination.
    const nodes = areas.flatMap((area) => [...area.nodes]);
    const table = [0, 1, 2].map((r) =>
      [0, 1, 2, 3].map((c) =>
        nodes.reduce((sum, i) => {
          const terms = [1, mesh.x[i], mesh.y[i], measured.w[i]];
          return sum + terms[r] * terms[c];
        }, 0),
      ),
    );
    for (let k = 0; k < 3; k++)
      for (let r = 0; r < 3; r++) {
        if (r === k) continue;
        const share = table[r][k] / table[k][k];
        for (let c = 0; c < 4; c++) table[r][c] -= share * table[k][c];
      }
    const [a, bx, by] = table.map((equation, k) => equation[3] / equation[k]);
    const heights = nodes.map((i) => measured.w[i] - a - bx * mesh.x[i] - by * mesh.y[i]);
    expect(read(row, solved.solution.u)).toBeCloseTo(Math.max(...heights) - Math.min(...heights), 12);
    expect(Math.abs(read(row, plane))).toBeLessThan(1e-12);
  });

  it('aims at 0.7 of the tolerance, and not below 0.15 of an error at once', () => {
    // 0.7 x 0.01 x 0.03 = 2.1e-4 of an error of 4.2e-4 is a half; of 4.2e-2 it is a 200th.
    expect(goals(judged('flatness', 4.2e-4))[0].ratio).toBeCloseTo(0.5, 12);
    expect(goals(judged('flatness', 4.2e-2))[0].ratio).toBe(0.15);
  });

  it('is for the sites that may be the worst, those within twice the error of it', () => {
    const bows = measured.sites.map(({ bow }) => Math.abs(bow)).sort((one, other) => other - one);
    const value = 2 * bows[0];
    expect(goals({ ...judged('bow', 0.49 * bows[0]), value })).toEqual([]);
    expect(goals({ ...judged('bow', 0.51 * bows[0]), value }).length).toBeGreaterThan(0);
  });

  it('is open while an error of bow or flatness is above its share of the limit', () => {
    const [bow, flat] = [judged('bow', 3.1e-4), judged('flatness', 2.9e-4)];
    expect(unsettled([bow, flat], 0.01)).toEqual([bow]);
    expect(
      unsettled(
        [
          { ...bow, criterion: 'contact' },
          { ...flat, error: null },
        ],
        0.01,
      ),
    ).toEqual([]);
  });
});
