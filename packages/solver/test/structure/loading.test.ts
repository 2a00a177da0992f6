import { Matrix, solve } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import type { PlateLoad, PlateProblem } from '../../src/plate/plate-problem.ts';
import { onThree, solved as solvedAnew } from './solved.ts';

const { meshed } = solvedAnew(onThree);
const solved: typeof solvedAnew = (problem, rest) =>
  solvedAnew(problem, problem.outline === onThree.outline ? { meshed, ...rest } : rest);

/** Reactions of three points to a force at a place: lift and both moments vanish. */
function statics(force: number, [x, y]: readonly [number, number]): number[] {
  const at = onThree.supports!.map((support) => support.at);
  const A = new Matrix([at.map(() => 1), at.map((p) => p[0]), at.map((p) => p[1])]);
  return solve(A, Matrix.columnVector([-force, -force * x, -force * y])).to1DArray();
}

const kinds: Record<string, { load: PlateLoad; force: number; centre: readonly [number, number] }> = {
  'a force at a point': { load: { at: [7, -3], force: 12 }, force: 12, centre: [7, -3] },
  'a force over an area': {
    load: { over: { rectangle: [20, 12], centre: [4, 1] }, force: -90 },
    force: -90,
    centre: [4, 1],
  },
  'a pressure over an area': {
    load: { over: { rectangle: [20, 12], centre: [4, 1] }, pressure: 0.5 },
    force: 120,
    centre: [4, 1],
  },
  'a pressure over all of it': { load: { over: 'all', pressure: -0.01 }, force: -24, centre: [0, 0] },
  'a force along a line': {
    load: { along: { from: [-20, 2], to: [10, 12] }, force: 30 },
    force: 30,
    centre: [-5, 7],
  },
  'a force on points by their shares': {
    load: {
      points: [
        [-10, 0, 1],
        [10, 8, 3],
      ],
      force: 16,
    },
    force: 16,
    centre: [5, 6],
  },
};

describe('loads of a plate on three points', () => {
  for (const [name, { load, force, centre }] of Object.entries(kinds))
    it(`are borne as statics says: ${name}`, () => {
      const [{ reactions, load: total, residual }] = solved({ ...onThree, loads: [load] }).cases;
      statics(force, centre).forEach((reaction, i) => {
        expect(reactions[i]).toBeCloseTo(reaction, 8);
      });
      expect(total).toBeCloseTo(force, 9);
      expect(residual).toBeLessThan(1e-9);
    });

  it('add up, in one case and over cases that share their places', () => {
    const [a, b] = [kinds['a force at a point'], kinds['a pressure over an area']];
    const twice = { ...a.load, force: 2 * a.force } as PlateLoad;
    const problems: PlateProblem[] = [[a.load], [twice, b.load], [b.load]].map((loads) => ({ ...onThree, loads }));
    const [first, both, last] = solved(onThree, { problems }).cases;
    const largest = Math.max(...both.u.map(Math.abs));
    both.u.forEach((value, i) => {
      expect(Math.abs(value - 2 * first.u[i] - last.u[i])).toBeLessThan(1e-9 * largest);
    });
    expect(both.load).toBeCloseTo(2 * 12 + 120, 9);
  });

  it.each([
    [
      { at: [7, -3], force: 1 },
      { at: [-9, 8], force: 1 },
    ],
    [
      { over: { rectangle: [20, 12], centre: [4, 1] }, force: 1 },
      { over: { rectangle: [20, 12], centre: [-9, 8] }, force: 1 },
    ],
    [
      { along: { from: [-20, 2], to: [10, 12] }, force: 1 },
      { along: { from: [-20, -2], to: [10, -12] }, force: 1 },
    ],
    [
      { points: [[7, -3]], force: 1 },
      { points: [[-9, 8]], force: 1 },
    ],
  ] as [PlateLoad, PlateLoad][])('act each at its own place where two are of a kind: %j', (one, other) => {
    const problems = [[one], [other], [one, other]].map((loads) => ({ ...onThree, loads }));
    const [a, b] = problems.map((problem) => solved(problem).cases[0].reactions);
    const [, , both] = solved(onThree, { problems }).cases;
    expect(Math.abs(a[0] - b[0])).toBeGreaterThan(0.05);
    both.reactions.forEach((reaction, i) => {
      expect(reaction).toBeCloseTo(a[i] + b[i], 9);
    });
  });

  it('are none where none is given', () => {
    const [{ u, reactions, load }] = solved(onThree).cases;
    expect(load).toBe(0);
    expect(Math.max(...u.map(Math.abs), ...reactions.map(Math.abs))).toBe(0);
  });

  it.each([
    [{ at: [90, 0], force: 1 }, 'loads.1.at'],
    [{ over: { circle: 2, centre: [90, 0] }, force: 1 }, 'loads.1.over'],
    [{ along: { from: [70, 0], to: [90, 0] }, force: 1 }, 'loads.1.along'],
    [{ points: [[90, 0]], force: 1 }, 'loads.1.points'],
  ] as [PlateLoad, string][])('are refused off the plate: %j', (load, path) => {
    expect(() => solved({ ...onThree, loads: [{ at: [0, 0], force: 1 }, load] })).toThrow(
      expect.objectContaining({ code: 'OUTSIDE', path: expect.stringContaining(path) }),
    );
  });
});

/** Half of a plate cut along a slanted line of symmetry, on two points that mirror each other along it. */
const half: PlateProblem = {
  ...onThree,
  outline: {
    polygon: [
      [-32, -24],
      [32, 24],
      [-15, 20],
    ],
  },
  edges: [{ along: { from: [-32, -24], to: [32, 24] }, held: 'symmetry' }],
  supports: [{ at: [12.4, 16.8] }, { at: [-19.6, -7.2] }],
};

describe('a temperature gradient', () => {
  const [alpha, gradient] = [1e-5, 20];
  const temperature = { alpha, gradient };

  it.each([false, true])(
    'bends a free plate to a sphere that presses on nothing, also cut along a slanted line of symmetry; free to stretch: %s',
    (coupled) => {
      const { structure, cases } = solved({ ...half, temperature }, { coupled });
      expect(structure.inPlane !== null).toBe(coupled);
      const [{ u, reactions }] = cases;
      const curvature = (alpha * gradient) / 4.5;
      const sphere = Array.from(structure.mesh.x, (x, i) => (-curvature * (x ** 2 + structure.mesh.y[i] ** 2)) / 2);
      for (const reaction of reactions) expect(Math.abs(reaction)).toBeLessThan(1e-7);
      expect(structure.holds.turned.length).toBeGreaterThan(0);
      sphere.forEach((w, i) => {
        expect(u[3 * i] - u[0]).toBeCloseTo(w - sphere[0], 10);
      });
    },
  );

  it('leaves a plate flat that is clamped all round: the moments are the same everywhere', () => {
    const { u } = solved({ ...half, supports: [], edges: [{ along: 'all', held: 'clamped' }], temperature }).cases[0];
    // Free, it would rise by 17 um.
    expect(Math.max(...u.map(Math.abs))).toBeLessThan(1e-12);
  });
});
