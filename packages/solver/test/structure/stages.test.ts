import { describe, expect, it } from 'vitest';
import type { PlateProblem } from '../../src/plate/plate-problem.ts';
import { advance, type PlateRequest } from '../../src/structure/stages.ts';

const plate: PlateProblem = {
  plate: 1,
  outline: { rectangle: [60, 40], corner: 3 },
  section: { E: 66000, nu: 0.29, thickness: 4.5 },
  regions: [{ shape: { rectangle: [10, 40] }, section: { E: 2e5, nu: 0.27, thickness: 3 } }],
  supports: [
    { at: [-25, -15], diameter: 4 },
    { at: [25, -15], diameter: 4, stiffness: 5e4 },
    { at: [0, 16], diameter: 4 },
    { at: [25, 15], diameter: 4, stiffness: 8e4 },
  ],
  loads: [{ over: { rectangle: [20, 12], centre: [4, 1] }, force: 90 }],
  theory: 'shear',
  mesh: { size: 6 },
};

const request = (problem: PlateProblem, rest: Partial<PlateRequest> = {}): PlateRequest => ({
  problems: [problem],
  areas: [],
  coarsening: 1,
  keepMesh: true,
  ...rest,
});

const moved: PlateProblem = {
  ...plate,
  supports: plate.supports!.map((support, i) => (i === 2 ? { ...support, at: [-6, 11] } : support)),
};

describe('stages of a plate solve', () => {
  const first = advance(null, request(plate));

  it('renew one half-solve when one support moves, and give what a fresh solve on the same mesh gives', () => {
    const next = advance(first, request(moved));
    const fresh = advance(null, request(moved, { meshed: first.meshed }));
    expect(next.structure).toBe(first.structure);
    const keptSolves = [...next.supports.values()].filter((solve) => [...first.supports.values()].includes(solve));
    expect(keptSolves).toHaveLength(3);
    const largest = Math.max(...fresh.cases[0].u.map(Math.abs));
    next.cases[0].u.forEach((value, i) => {
      expect(Math.abs(value - fresh.cases[0].u[i])).toBeLessThan(1e-12 * largest);
    });
    expect(Math.max(...first.cases[0].u.map((value, i) => Math.abs(value - next.cases[0].u[i])))).toBeGreaterThan(
      0.01 * largest,
    );
  });

  it('make the mesh anew for moved supports when it is not to be kept', () => {
    expect(advance(first, request(moved, { keepMesh: false })).structure).not.toBe(first.structure);
    expect(advance(first, request(plate, { keepMesh: false })).structure).toBe(first.structure);
  });

  it('come back to the mesh of the problem once a drag has ended elsewhere', () => {
    const dragged = advance(first, request(moved));
    const ended = advance(dragged, request(moved, { keepMesh: false }));
    const fresh = advance(null, request(moved));
    expect([...ended.cases[0].u]).toEqual([...fresh.cases[0].u]);
  });

  it('keep factor and supports when only a load changes, and scale with it', () => {
    const doubled = {
      ...plate,
      loads: [{ over: { rectangle: [20, 12], centre: [4, 1] }, force: 180 }],
    } as PlateProblem;
    const next = advance(first, request(doubled));
    expect(next.structure).toBe(first.structure);
    expect([...next.supports.values()]).toEqual([...first.supports.values()]);
    expect(next.cases[0].reactions[2] / first.cases[0].reactions[2]).toBeCloseTo(2, 10);
  });

  it('keep the mesh but not the factor when a section changes', () => {
    const thicker = { ...plate, section: { E: 66000, nu: 0.29, thickness: 5 } };
    const next = advance(first, request(thicker, { keepMesh: false }));
    expect(next.meshed).toBe(first.meshed);
    expect([...next.cases[0].u]).toEqual([...advance(null, request(thicker)).cases[0].u]);
    expect(next.cases[0].u).not.toEqual(first.cases[0].u);
  });

  it('start over when a shape changes, or how fine it is', () => {
    const meshOf = (problem: PlateProblem, rest: Partial<PlateRequest> = {}) =>
      advance(first, request(problem, rest)).meshed;
    expect(meshOf({ ...plate, outline: { rectangle: [61, 40] } })).not.toBe(first.meshed);
    expect(meshOf({ ...plate, openings: [{ circle: 4 }] })).not.toBe(first.meshed);
    expect(meshOf({ ...plate, regions: [{ ...plate.regions![0], shape: { circle: 9 } }] })).not.toBe(first.meshed);
    expect(meshOf({ ...plate, mesh: { size: 7 } })).not.toBe(first.meshed);
    expect(meshOf(plate, { coarsening: 1.5 })).not.toBe(first.meshed);
    expect(
      meshOf(plate, {
        areas: [
          [
            [0, 0],
            [4, 0],
            [0, 4],
          ],
        ],
      }),
    ).not.toBe(first.meshed);
    expect(meshOf({ ...plate, loads: [{ at: [3, 4], force: 1 }] })).not.toBe(first.meshed);
  });

  it('keep the mesh and the factor of a point load that changes its force', () => {
    const loaded = (force: number): PlateProblem => ({ ...plate, loads: [{ at: [3, 4], force }] });
    const before = advance(null, request(loaded(1)));
    const next = advance(before, request(loaded(2)));
    expect(next.structure).toBe(before.structure);
    expect(next.cases[0].u[12] / before.cases[0].u[12]).toBeCloseTo(2, 9);
  });

  it('make the factor anew when what stiffens the plate changes', () => {
    for (const change of [
      { regions: [{ ...plate.regions![0], section: plate.section }] },
      { edges: [{ along: 'all', held: 'simple' }] },
      { foundations: [{ over: 'all', modulus: 1 }] },
      { theory: 'thin' },
    ] as Partial<PlateProblem>[]) {
      const next = advance(first, request({ ...plate, ...change }));
      expect(next.structure, JSON.stringify(change)).not.toBe(first.structure);
      expect(next.meshed).toBe(first.meshed);
    }
  });

  it('tell the residual, unless it is left out', () => {
    expect(first.cases[0].residual).toBeLessThan(1e-10);
    expect(advance(first, request(moved)).cases[0].residual).toBeGreaterThan(0);
    expect(advance(first, request(moved, { withoutResidual: true })).cases[0].residual).toBeNull();
  });

  it('solve cases side by side as each alone', () => {
    const other = { ...plate, loads: [{ at: [-20, 5], force: -12 }] } as PlateProblem;
    const both = advance(null, request(plate, { problems: [plate, other], meshed: first.meshed }));
    const alone = advance(null, request(other, { meshed: first.meshed }));
    expect([...both.cases[1].reactions]).toEqual([...alone.cases[0].reactions]);
    expect(both.cases[1].load).toBeCloseTo(-12, 12);
  });
});
