import { describe, expect, it } from 'vitest';
import { compileHead } from '../../src/model/compile.ts';
import { checkHeadModel } from '../../src/model/read.ts';
import { solveHead } from '../../src/solve-head.ts';
import { faultOf } from './fault-of.ts';
import { altered, twoByTwo } from './two-by-two.ts';

/** Centres of the cells of an even grid over a field. */
function grid(columns: number, rows: number, [width, height]: readonly [number, number]): [number, number][] {
  return Array.from({ length: columns * rows }, (_, i) => [
    (((i % columns) + 0.5) / columns - 0.5) * width,
    ((Math.floor(i / columns) + 0.5) / rows - 0.5) * height,
  ]);
}

const { field } = twoByTwo.sites.probes;
const listed = grid(22, 10, field);
const head = (changes: Readonly<Record<string, unknown>>) => checkHeadModel(altered(twoByTwo, changes));
const bow = (model: ReturnType<typeof head>, i = 0) => solveHead(model).result.cases[i].bow.value;

describe('probes listed one by one', () => {
  it('press as point loads, with the bow of the same load spread evenly to 0.5 %', () => {
    const model = head({ 'sites.probes.positions': listed });
    const { problems } = compileHead(model);
    expect(problems[0].loads!.map((load) => 'points' in load && load.points.length)).toEqual([220, 220, 220, 220]);
    expect(bow(model) / bow(twoByTwo)).toBeCloseTo(1, 2);
    expect(Math.abs(bow(model) / bow(twoByTwo) - 1)).toBeLessThan(5e-3);
    // Two grids of points cannot give the same number: they are no field.
    expect(bow(model)).not.toBe(bow(twoByTwo));
  });

  it('press where they stand: one probe with all the force of a site bows more than the field', () => {
    const force = 220 * 0.04;
    const one = head({ 'sites.probes.positions': [[0, 0, force]], 'sites.probes.count': 1 });
    const run = solveHead(one).result;
    expect(run.cases[0].load).toBeCloseTo(4 * force, 9);
    expect(run.cases[0].reaction).toBeCloseTo(-4 * force, 6);
    expect(Math.abs(run.cases[0].bow.value)).toBeGreaterThan(1.005 * Math.abs(bow(twoByTwo)));
  });

  it('press each with its own force: one of 0 N beside another changes nothing', () => {
    const force = 220 * 0.04;
    const at = (...positions: number[][]) =>
      bow(head({ 'sites.probes.positions': positions, 'sites.probes.count': positions.length }));
    expect(at([2, 1, 0], [-1, 0, force]) / at([-1, 0, force])).toBeCloseTo(1, 12);
    expect(at([2, 1, force / 2], [-1, 0, force / 2]) / at([-1, 0, force])).not.toBeCloseTo(1, 3);
  });

  it('have a preload of their own where it is given, and the resultant of all', () => {
    const model = head({
      'sites.probes.positions': listed.map(([x, y], i) => (i % 2 === 0 ? [x, y, 0.08] : [x, y])),
    });
    const { cases } = solveHead(model).result;
    expect(cases[0].load).toBeCloseTo(4 * 110 * (0.08 + 0.04), 9);
  });

  it('differ from site to site, as do their places and fields', () => {
    const model = head({
      'sites.own': { A1: { positions: [[0.5, 0, 1]] }, B2: { at: [7, -6], field: [3, 2], positions: [[1, 1, 2]] } },
    });
    const { sites, siteProbes } = compileHead(model);
    expect(sites[3]).toMatchObject({ name: 'B2', centre: [7, -6], field: [3, 2] });
    expect(siteProbes.map(({ points }) => points?.[0] ?? null)).toEqual([[-5.5, 5, 1], null, null, [8, -5, 2]]);
    expect(solveHead(model).result.cases[0].load).toBeCloseTo(1 + 2 + 2 * 220 * 0.04, 9);
  });

  it('keep their force less rate times deflection, each where it stands', () => {
    const at: [number, number, number][] = [
      [2, 1.5, 0.03],
      [-2, 0, 0.07],
    ];
    const model = head({
      ...{ 'sites.probes.positions': at, 'sites.probes.count': 2, 'sites.probes.rate': 2 },
      ...{ 'body.thickness': 1, 'frame.thickness': 1 },
    });
    const { mesh, cases } = solveHead(model).result;
    const { contact } = cases[0].sites[0];
    // By the deflection of the nearest nodes; the field is finely meshed.
    const near = at.map(([x, y]) => {
      const distance = (i: number) => Math.hypot(mesh.x[i] + 6 - x, mesh.y[i] - 5 - y);
      const node = [...mesh.x.keys()].reduce((a, b) => (distance(b) < distance(a) ? b : a));
      return cases[0].w[node];
    });
    const forces = near.map((w, i) => at[i][2] - 2 * w);
    expect(contact!.board!.minimum).toBeCloseTo(Math.min(...forces), 3);
    expect(contact!.board!.mean).toBeCloseTo((forces[0] + forces[1]) / 2, 3);
  });

  it('relax in balance: what they press with is what the fasteners hold', () => {
    const model = head({ 'sites.probes.positions': listed, 'sites.probes.rate': 5, 'sites.probes.relax': true });
    const { load, reaction } = solveHead(model).result.cases[0];
    expect(load).toBeLessThan(4 * 220 * 0.04);
    expect(load + reaction).toBeCloseTo(0, 6);
  });

  it('keep the plan of an earlier compile until a single probe moves', () => {
    const model = head({ 'sites.probes.positions': listed });
    const { plan } = compileHead(model);
    expect(compileHead(structuredClone(model), plan).plan).toBe(plan);
    const moved = listed.map(([x, y], i) => [x, i === 100 ? y + 1e-6 : y]);
    expect(compileHead(head({ 'sites.probes.positions': moved }), plan).plan).not.toBe(plan);
  });

  it.each([
    ['a count of another number', { 'sites.probes.positions': [[0, 0]] }, 'SCHEMA', 'sites.probes.count'],
    [
      'a probe outside its field',
      {
        'sites.own': {
          A2: {
            positions: [
              [0, 0],
              [2.3, 0],
            ],
          },
        },
      },
      'OUTSIDE',
      'sites.own.A2.positions.1',
    ],
    [
      'a probe listed twice',
      {
        'sites.own': {
          A2: {
            positions: [
              [0, 1],
              [0, 1],
            ],
          },
        },
      },
      'OVERLAP',
      'sites.own.A2.positions.1',
    ],
    ['an unknown site', { 'sites.own': { C1: { at: [0, 0] } } }, 'SCHEMA', 'sites.own.C1'],
    ['a site moved onto another', { 'sites.own': { A2: { at: [-5, 5] } } }, 'OVERLAP', 'sites.own'],
    [
      'a moved site over a wafer',
      { 'sites.own': { A2: { at: [6, 6] } }, 'cases.0.touched': { wafer: { diameter: 100, edge: 3 } } },
      'SCHEMA',
      'cases.0.touched.wafer',
    ],
    [
      'more holes than its own field has room for',
      {
        'sites.probes.holes': { pitch: 0.28, diameter: 0.18, pattern: 'square' },
        'sites.own': { A1: { field: [3, 3] } },
      },
      'OUT_OF_RANGE',
      'sites.probes.count',
    ],
  ])('are refused with %s', (_, changes, code, path) => {
    expect(faultOf(() => compileHead(head(changes)))).toMatchObject({ code, path });
  });
});
