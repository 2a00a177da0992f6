import { readFileSync } from 'node:fs';
import { type HeadModel, readHeadModel, solveHead } from '@flathead/solver';
import { Matrix, solve } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { deflectionShape } from '../../packages/solver/src/element/deflection.ts';
import { compileHead } from '../../packages/solver/src/model/compile.ts';
import type { PlateLoad } from '../../packages/solver/src/plate/plate-problem.ts';
import { sampleAreas } from '../../packages/solver/src/results/sample-areas.ts';
import { advanceGroups } from '../../packages/solver/src/structure/groups.ts';
import { advance, type PlateStages } from '../../packages/solver/src/structure/stages.ts';
import { radon7 } from '../../packages/solver/test/element/quadrature.ts';

const kestrel = readHeadModel(readFileSync(new URL('../../models/kestrel-both.json', import.meta.url), 'utf8'));
const [count, preload, rate] = [336, 0.09, 0.5];
const withProbes = (model: HeadModel, probes: Partial<HeadModel['sites']['probes']>): HeadModel => ({
  ...model,
  sites: { ...model.sites, probes: { ...model.sites.probes, ...probes } },
});
const relaxed = withProbes(kestrel, { relax: true });

/** A block some thousand times stiffer than its springs: it moves as w = a + bx x + by y. w is about 0.018 mm. */
const block: HeadModel = {
  flathead: 1,
  name: 'rigid block on springs',
  body: { outline: { rectangle: [60, 50] }, thickness: 13, material: 'hard' },
  sites: {
    columns: 2,
    rows: 1,
    pitch: [14, 10],
    origin: [4, -3],
    probes: { count: 400, field: [8, 6], preload: 0.1, touchdown: 0.3, rate: 0.6, relax: true },
  },
  fasteners: [
    { name: 'F1', at: [-24, -20], bearing: 4, stiffness: 900 },
    { name: 'F2', at: [25, -18], bearing: 4, stiffness: 1500 },
    { name: 'F3', at: [20, 19], bearing: 4, stiffness: 1100 },
    { name: 'F4', at: [-22, 17], bearing: 4, stiffness: 700 },
  ],
  cases: [{ name: 'mounted' }, { name: 'one touched', touched: ['A1'] }],
  limits: { bow: 1, contactForce: 0.01 },
  theory: 'thin',
  mesh: { size: 3 },
  materials: { hard: { E: 1e6, nu: 0.25 } },
};

/** Balance of force and moments of a rigid block on springs and foundations: `S [a; bx; by] = p` with [1, x, y]. */
function rigidMotion(fields: readonly (readonly [x: number, y: number])[]): number[] {
  const { probes } = block.sites;
  const [width, height] = probes.field;
  const S = Matrix.zeros(3, 3);
  const p = Matrix.zeros(3, 1);
  const add = (k: number, x: number, y: number, xx: number, yy: number): void => {
    [
      [1, x, y],
      [x, xx, x * y],
      [y, x * y, yy],
    ].forEach((row, i) => {
      row.forEach((value, j) => {
        S.set(i, j, S.get(i, j) + k * value);
      });
    });
  };
  for (const { at, stiffness } of block.fasteners) add(Number(stiffness), at[0], at[1], at[0] ** 2, at[1] ** 2);
  for (const [x, y] of fields) {
    add(probes.count * probes.rate!, x, y, x * x + width ** 2 / 12, y * y + height ** 2 / 12);
    [1, x, y].forEach((lever, i) => {
      p.set(i, 0, p.get(i, 0) + probes.count * probes.preload * lever);
    });
  }
  return solve(S, p).to1DArray();
}

/** What the block itself bends by, mm, is below 2e-5: a thousandth of its motion. */
const BENT = 2e-5;

describe('a rigid head on springs whose probes relax: balance of force and moments (derived)', () => {
  const { cases, verdict } = solveHead(block).result;

  it.each([
    [
      'mounted',
      0,
      [
        [-3, -3],
        [11, -3],
      ],
    ],
    ['one touched', 1, [[11, -3]]],
  ] as const)('%s', (_, index, fields) => {
    const [a, bx, by] = rigidMotion(fields);
    const w = (x: number, y: number): number => a + bx * x + by * y;
    const solved = cases[index];
    for (const { at, w: seat, reaction, stiffness } of solved.fasteners) {
      expect(Math.abs(seat - w(at[0], at[1]))).toBeLessThan(BENT);
      expect(reaction).toBeCloseTo(-stiffness! * seat, 9);
    }
    for (const [x, y] of fields) {
      const { contact } = solved.sites[x < 0 ? 0 : 1];
      const { minimum, mean, spread, compression } = contact!.board!;
      const corners = [-4, 4].flatMap((dx) => [-3, 3].map((dy) => 0.1 - 0.6 * w(x + dx, y + dy)));
      expect(Math.abs(minimum - Math.min(...corners))).toBeLessThan(0.6 * BENT);
      expect(Math.abs(mean - 0.1 + 0.6 * w(x, y))).toBeLessThan(0.6 * BENT);
      expect(Math.abs(spread - Math.max(...corners) + Math.min(...corners))).toBeLessThan(0.6 * BENT);
      expect(Math.abs(compression - Math.min(...corners) / 0.6)).toBeLessThan(BENT);
    }
    const load = fields.reduce((sum, [x, y]) => sum + 400 * (0.1 - 0.6 * w(x, y)), 0);
    expect(Math.abs(solved.load - load)).toBeLessThan(fields.length * 400 * 0.6 * BENT);
  });

  it('judges the contact force by its least value', () => {
    const judged = verdict.criteria.find(({ criterion }) => criterion === 'contact')!;
    const [a, bx, by] = rigidMotion([
      [-3, -3],
      [11, -3],
    ]);
    const least = Math.min(...[-7, 1, 7, 15].flatMap((x) => [-6, 0].map((y) => 0.1 - 0.6 * (a + bx * x + by * y))));
    expect(judged).toMatchObject({ unit: 'N', bound: 'least', limit: 0.01, case: 'mounted', shearAdds: null });
    expect(Math.abs(judged.value - least)).toBeLessThan(0.6 * BENT);
  });
});

describe('the Kestrel head whose probes relax', () => {
  const { cases } = solveHead(relaxed, { quality: 'live' }).result;
  const stiff = solveHead(kestrel, { quality: 'live' }).result.cases;

  it('bows less, and its contact is better than that of the whole preload', () => {
    for (const index of [0, 1]) {
      expect(cases[index].bow.value).toBeLessThan(0.95 * stiff[index].bow.value);
      expect(cases[index].bow.value).toBeGreaterThan(0.7 * stiff[index].bow.value);
      const of = (solved: typeof stiff) =>
        Math.min(...solved[index].sites.map(({ contact }) => contact!.board!.minimum));
      expect(of(cases)).toBeGreaterThan(of(stiff));
    }
  });

  it('carries sum (preload - rate w), which its fasteners balance', () => {
    expect(cases[0].load).toBeLessThan(0.95 * 10 * count * preload);
    for (const { load, reaction, sites } of cases) {
      expect(Math.abs(load + reaction)).toBeLessThan(1e-9 * Math.max(1, load));
      const fromContact = sites.reduce((sum, { contact }) => sum + count * contact!.board!.mean, 0);
      const relieved = sites.filter(({ contact }) => contact!.board!.spread === 0).length;
      expect(fromContact - relieved * count * 0.18).toBeCloseTo(load, 8);
    }
  });

  it('is what repeated solves of the head under the forces that are left come to', () => {
    const head = compileHead(relaxed);
    const areas = head.siteArea;
    const { structure, solution } = advanceGroups(null, {
      problems: head.problems,
      areas,
      coarsening: 1,
      keepMesh: false,
    }).cases[0];
    const { mesh, firstArea } = structure;
    const { foundations: _, ...unrelaxed } = head.problems[0];
    const triangles = sampleAreas(
      mesh,
      firstArea,
      head.sites.map(({ name }) => name),
    ).flatMap((area) => [...area.triangles]);
    const modulus = (rate * count) / (5.6 * 7.35);

    // Seven points a triangle integrate k w N exactly: k w is taken off as a force at each.
    const lost = (u: Float64Array): PlateLoad[] =>
      triangles.flatMap((t) => {
        const nodes = mesh.triangles.subarray(3 * t, 3 * t + 3);
        const x = Float64Array.from(nodes, (node) => mesh.x[node]);
        const y = Float64Array.from(nodes, (node) => mesh.y[node]);
        const area = ((x[1] - x[0]) * (y[2] - y[0]) - (x[2] - x[0]) * (y[1] - y[0])) / 2;
        const N = new Float64Array(9);
        return radon7.map(({ l, weight }) => {
          deflectionShape(x, y, l[0], l[1], l[2], N);
          const w = N.reduce((sum, share, p) => sum + share * u[3 * nodes[Math.floor(p / 3)] + (p % 3)], 0);
          const place = (c: Float64Array): number => l[0] * c[0] + l[1] * c[1] + l[2] * c[2];
          return { at: [place(x), place(y)] as [number, number], force: -modulus * weight * area * w };
        });
      });
    let stages: PlateStages | null = null;
    let u: Float64Array = new Float64Array(3 * mesh.x.length);
    for (let round = 0; round < 14; round++) {
      const loads = [...unrelaxed.loads!, ...lost(u)];
      const problems = [{ ...unrelaxed, loads }];
      stages = advance(stages, {
        problems,
        areas,
        coarsening: 1,
        keepMesh: true,
        meshed: structure,
        withoutResidual: true,
      });
      u = stages.cases[0].u;
    }
    const largest = Math.max(...solution.u.map(Math.abs));
    const off = Math.max(...solution.u.map((value, i) => Math.abs(value - u[i])));
    expect(off / largest).toBeLessThan(1e-8);
  });

  it('comes to the head that keeps its preload as the rate vanishes', () => {
    const soft = solveHead(withProbes(relaxed, { rate: 1e-4 }), { quality: 'live' }).result.cases[0];
    expect(soft.bow.value).toBeLessThan(stiff[0].bow.value);
    expect(soft.bow.value / stiff[0].bow.value).toBeCloseTo(1, 4);
  });
});

describe('stages of a head whose probes relax', () => {
  const first = solveHead(relaxed, { quality: 'live' });
  const moved: HeadModel = {
    ...relaxed,
    fasteners: relaxed.fasteners.map((fastener, i) => (i === 0 ? { ...fastener, at: [-39, 25] } : fastener)),
  };

  it('hold one factor for each set of springs, all on one mesh', () => {
    const groups = [...first.stages.main.groups.values()];
    expect(groups).toHaveLength(3);
    expect(new Set(groups.map(({ meshed }) => meshed)).size).toBe(1);
    expect(solveHead(kestrel, { quality: 'live' }).stages.main.groups.size).toBe(1);
    const shouldered = solveHead(withProbes(relaxed, { kind: 'shouldered' }), { quality: 'live' });
    expect(shouldered.stages.main.groups.size).toBe(1);
  });

  it('are kept while a fastener moves, and answer as a fresh solve on the same mesh', () => {
    const next = solveHead(moved, { quality: 'live', previous: first.stages });
    for (const [key, stages] of next.stages.main.groups)
      expect(stages.structure === first.stages.main.groups.get(key)!.structure, key).toBe(true);
    const [{ meshed }] = first.stages.main.groups.values();
    const head = compileHead(moved);
    const request = { problems: head.problems, areas: head.siteArea, coarsening: 1, keepMesh: true, meshed };
    advanceGroups(null, request).cases.forEach(({ solution }, i) => {
      const w = next.result.cases[i].w;
      const largest = Math.max(...w.map(Math.abs));
      expect(Math.max(...w.map((value, n) => Math.abs(value - solution.u[3 * n])))).toBeLessThanOrEqual(
        1e-11 * largest,
      );
    });
    const ended = solveHead(moved, { previous: next.stages }).result;
    expect(ended.cases[0].bow).toEqual(solveHead(moved).result.cases[0].bow);
  });
});
