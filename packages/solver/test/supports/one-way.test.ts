import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { describe, expect, it } from 'vitest';
import { averageRow } from '../../src/assembly/rows.ts';
import { areaCells } from '../../src/geometry/area-cells.ts';
import { area } from '../../src/geometry/region.ts';
import { shapeRing } from '../../src/geometry/ring.ts';
import { dotDense } from '../../src/linear-algebra/half-solve.ts';
import { forward } from '../../src/linear-algebra/solve.ts';
import { complianceMatrix, type Support, type SupportSolve, solveSupport } from '../../src/supports/compliance.ts';
import { equilibrium, react } from '../../src/supports/equilibrium.ts';
import { reactOneWay } from '../../src/supports/one-way.ts';
import { atNode, freePlate } from './free-plate.ts';

const plate = freePlate(9, 6);

interface Problem {
  readonly solved: readonly SupportSolve[];
  readonly seat: Float64Array;
  readonly resultant: Float64Array;
}

function problem(supports: readonly Omit<Support, 'name'>[], f: Float64Array): Problem {
  const solved = supports.map((support, i) =>
    solveSupport(plate.factor, plate.motion, { name: `S${i + 1}`, ...support }),
  );
  const y = forward(plate.factor, f);
  return {
    solved,
    seat: Float64Array.from(solved, ({ half }) => dotDense(half, y)),
    resultant: Float64Array.from(plate.motion.fields, (field) => field.reduce((sum, v, i) => sum + v * f[i], 0)),
  };
}

/** Deflection of every seat under forces and motion. */
function seats({ solved, seat }: Problem, force: ArrayLike<number>, motion: ArrayLike<number>): number[] {
  const m = solved.length;
  const G = complianceMatrix(solved);
  return solved.map((support, i) => {
    let w = seat[i];
    for (let j = 0; j < m; j++) w += G[i * m + j] * force[j];
    support.motion.forEach((share, k) => {
      w += share * motion[k];
    });
    return w;
  });
}

const senseOf = ({ support: { acts } }: SupportSolve) => (acts === 'pull' ? -1 : acts === 'push' ? 1 : 0);

/** Every set of one-way supports let go in turn: the forces of the one whose signs all hold, or null. */
function byEnumeration(given: Problem): Float64Array | null {
  const { solved, seat, resultant } = given;
  const oneWay = solved.flatMap((support, i) => (senseOf(support) === 0 ? [] : [i]));
  for (let set = 0; set < 2 ** oneWay.length; set++) {
    const letGo = oneWay.filter((_, k) => set & (1 << k));
    const kept = solved.map((_, i) => i).filter((i) => !letGo.includes(i));
    try {
      const system = equilibrium(
        kept.map((i) => solved[i]),
        resultant.length,
      );
      const { force, motion } = react(
        system,
        Float64Array.from(kept, (i) => seat[i]),
        resultant,
      );
      const full = new Float64Array(solved.length);
      kept.forEach((i, k) => {
        full[i] = force[k];
      });
      const w = seats(given, full, motion);
      const right = solved.every((support, i) =>
        letGo.includes(i) ? senseOf(support) * w[i] >= 0 : senseOf(support) * full[i] >= 0,
      );
      if (right) return full;
    } catch {
      // These supports alone do not hold the plate.
    }
  }
  return null;
}

/** Four to eight supports at different nodes, most of them one-way, and five loads either way. */
function random(seed: number): Problem {
  const generator = xoroshiro128plus(seed);
  const below = (n: number) => (generator.next() >>> 0) % n;
  const nodes = new Set<number>();
  const count = 4 + below(5);
  while (nodes.size < count) nodes.add(below(plate.n));
  const acts = ['pull', 'push', 'both', 'pull'] as const;
  const supports = [...nodes].map((node) => ({
    row: atNode(node),
    stiffness: below(3) === 0 ? null : 10 ** (2 + below(4)),
    acts: acts[below(4)],
  }));
  const f = new Float64Array(3 * plate.n);
  for (let k = 0; k < 5; k++) f[3 * below(plate.n)] += below(2000) / 100 - 4;
  return problem(supports, f);
}

/**
 * Three fasteners that act both ways, and `pads` seats of about `count` cells each, under five loads either
 * way: the plate rests on some cells and lifts off others.
 */
function seated(seed: number, pads: number, count: number): { given: Problem; cells: number[][] } {
  const generator = xoroshiro128plus(seed);
  const below = (n: number) => (generator.next() >>> 0) % n;
  // Never on one line.
  const at = [below(9), 60 + below(9), 29];
  const supports: Omit<Support, 'name'>[] = at.map((node) => ({ row: atNode(node), stiffness: 10 ** (2 + below(3)) }));
  const cells = [
    [2, 1.5],
    [9.5, 2],
    [3, 6.5],
    [9, 6],
  ]
    .slice(0, pads)
    .map(([x, y]) => {
      const shape =
        below(2) === 0
          ? { circle: 1.5 + below(10) / 10, centre: [x, y] as [number, number] }
          : { rectangle: [1 + below(20) / 10, 2] as [number, number], centre: [x, y] as [number, number] };
      const modulus = 10 ** (1 + below(4));
      return areaCells([shapeRing(shape, { chord: 0.02 })], count).map((ring) => {
        const row = averageRow(plate.mesh, plate.locator, ring, 'seat');
        return supports.push({ row, stiffness: modulus * area([ring]), acts: 'push' }) - 1;
      });
    });
  const f = new Float64Array(3 * plate.n);
  for (let k = 0; k < 5; k++) f[3 * below(plate.n)] += below(2000) / 100 - 12;
  return { given: problem(supports, f), cells };
}

/**
 * Forces or gaps that are exactly zero: symmetric plates, loads in balance with themselves, seats without load at heights,
 * springs of all sizes.
 */
function degenerate(seed: number): Problem {
  const generator = xoroshiro128plus(seed);
  const below = (n: number) => (generator.next() >>> 0) % n;
  const stiffnesses = [null, 1e1, 1e4, 1e7, 1e10] as const;
  const same = stiffnesses[below(5)];
  const isAlike = below(2) === 0;
  const acts = ['push', 'pull', 'push', 'both'] as const;
  const nodes = [0, 9, 60, 69, ...[3, 6, 30, 39, 63, 66].filter(() => below(2) === 0)];
  const supports = nodes.map((node, i) => ({
    row: atNode(node),
    stiffness: isAlike ? same : stiffnesses[below(5)],
    acts: i < 4 && isAlike ? ('push' as const) : acts[below(4)],
    height: seed % 3 === 0 ? (below(21) - 10) / 1000 : 0,
  }));
  const f = new Float64Array(3 * plate.n);
  if (seed % 4 === 0) for (const node of [34, 35]) f[3 * node] = -5;
  if (seed % 4 === 1)
    for (const [node, force] of [
      [30, 1],
      [34, -2],
      [38, 1],
    ])
      f[3 * node] = force;
  if (seed % 4 === 2)
    for (const [node, moment] of [
      [34, 3],
      [44, -3],
    ])
      f[3 * node + 1] = moment;
  const given = problem(supports, f);
  return { ...given, seat: given.seat.map((w, i) => w - supports[i].height) };
}

const answer = ({ solved, seat, resultant }: Problem) =>
  reactOneWay(equilibrium(solved, plate.motion.count), seat, resultant);

describe('supports that act one way', () => {
  it('hold or let go as every set of them tried in turn says, on 200 seeded plates', () => {
    let [letting, lifting] = [0, 0];
    for (let seed = 1; seed <= 200; seed++) {
      const given = random(seed);
      let solvable = true;
      try {
        equilibrium(given.solved, plate.motion.count);
      } catch {
        // Held by nothing, one-way or not.
        solvable = false;
      }
      if (!solvable) continue;
      const expected = byEnumeration(given);
      if (expected === null) {
        lifting++;
        expect(() => answer(given), `seed ${seed}`).toThrowError(expect.objectContaining({ code: 'MECHANISM' }));
        continue;
      }
      const { force, motion } = answer(given);
      const largest = Math.max(...expected.map(Math.abs));
      force.forEach((value, i) => {
        expect(Math.abs(value - expected[i]), `seed ${seed}, support ${i}`).toBeLessThan(1e-8 * largest);
      });
      const w = seats(given, force, motion);
      given.solved.forEach((support, i) => {
        const sense = senseOf(support);
        if (sense === 0) return;
        // Complementary: a force in its sense, or no force at all and the plate clear of it.
        expect(sense * force[i]).toBeGreaterThanOrEqual(-1e-9 * largest);
        if (force[i] === 0) {
          letting++;
          expect(sense * w[i]).toBeGreaterThanOrEqual(-1e-9 * Math.max(...w.map(Math.abs)));
        }
      });
    }
    // The seeds try both: supports that let go, and plates that nothing holds down.
    expect(letting).toBeGreaterThan(50);
    expect(lifting).toBeGreaterThan(10);
  });

  it('bear or lift off in cells of seats as every set of them tried in turn says, on 60 seeded plates', () => {
    let partly = 0;
    for (let seed = 1; seed <= 60; seed++) {
      const { given, cells } = seated(seed, 2, 2);
      const expected = byEnumeration(given);
      expect(expected, `seed ${seed}`).not.toBeNull();
      const { force } = answer(given);
      const largest = Math.max(...expected!.map(Math.abs));
      force.forEach((value, i) => {
        expect(Math.abs(value - expected![i]), `seed ${seed}, support ${i}`).toBeLessThan(1e-8 * largest);
      });
      for (const seat of cells) {
        const bearing = seat.filter((i) => force[i] > 0).length;
        if (bearing > 0 && bearing < seat.length) partly++;
      }
    }
    expect(partly).toBeGreaterThan(20);
  });

  it('leave no force on a gap and no push without touch, with some 64 cells on 60 seeded plates', () => {
    let [bearing, lifted] = [0, 0];
    for (let seed = 1; seed <= 60; seed++) {
      const { given, cells } = seated(seed, 4, 16);
      const { force, motion, letGo } = answer(given);
      const w = seats(given, force, motion);
      const [most, farthest] = [Math.max(...force.map(Math.abs)), Math.max(...w.map(Math.abs))];
      for (const i of cells.flat()) {
        const { stiffness } = given.solved[i].support;
        // Its gap: how far the plate is above the cell as the force has pressed it.
        const gap = w[i] + force[i] / stiffness!;
        expect(force[i], `seed ${seed}`).toBeGreaterThanOrEqual(-1e-9 * most);
        expect(gap, `seed ${seed}`).toBeGreaterThanOrEqual(-1e-9 * farthest);
        expect(Math.abs(force[i] * gap), `seed ${seed}`).toBeLessThan(1e-9 * most * farthest);
        if (letGo.has(i)) lifted++;
        else bearing++;
      }
      given.resultant.forEach((load, k) => {
        const held = given.solved.reduce((sum, { motion }, i) => sum + motion[k] * force[i], 0);
        expect(Math.abs(held + load)).toBeLessThan(1e-9 * most);
      });
    }
    expect(Math.min(bearing, lifted)).toBeGreaterThan(500);
  });

  it('are answered where forces and gaps are exactly zero, on 400 seeded plates', () => {
    let [answered, refused, unforced] = [0, 0, 0];
    for (let seed = 1; seed <= 400; seed++) {
      const given = degenerate(seed);
      let found: ReturnType<typeof answer>;
      try {
        found = answer(given);
      } catch (thrown) {
        expect(thrown, `seed ${seed}`).toMatchObject({
          code: 'MECHANISM',
          message: expect.stringContaining('lifts off'),
        });
        refused++;
        continue;
      }
      answered++;
      const { force, motion, letGo } = found;
      const w = seats(given, force, motion);
      const G = complianceMatrix(given.solved);
      const natural = [...given.seat].map((each, i) => Math.abs(each) / G[i * given.seat.length + i]);
      const [most, farthest] = [
        Math.max(...force.map(Math.abs), ...natural),
        Math.max(...[...w, ...given.seat].map(Math.abs)),
      ];
      if (Math.max(...force.map(Math.abs)) < 1e-9 * most) unforced++;
      given.solved.forEach((support, i) => {
        const { stiffness } = support.support;
        if (letGo.has(i)) expect(force[i]).toBe(0);
        else expect(w[i] + (stiffness === null ? 0 : force[i] / stiffness), `seed ${seed}`).toBeCloseTo(0, 9);
        expect(senseOf(support) * force[i], `seed ${seed}, support ${i}`).toBeGreaterThanOrEqual(-1e-7 * most);
        if (letGo.has(i)) expect(senseOf(support) * w[i], `seed ${seed}`).toBeGreaterThanOrEqual(-1e-7 * farthest);
      });
      given.resultant.forEach((load, k) => {
        const held = given.solved.reduce((sum, { motion }, i) => sum + motion[k] * force[i], 0);
        expect(Math.abs(held + load)).toBeLessThanOrEqual(1e-7 * most);
      });
    }
    expect(Math.min(answered, 10 * unforced, 100 * refused)).toBeGreaterThan(300);
  });

  it('are answered or refused with what to do where all but one stand on a line, on 300 seeded plates', () => {
    const messages = new Set<string>();
    for (let seed = 1; seed <= 300; seed++) {
      const generator = xoroshiro128plus(seed);
      const below = (n: number) => (generator.next() >>> 0) % n;
      const row = [30, 33, 36, 39].map((node) => ({
        row: atNode(node),
        stiffness: below(4) === 0 ? null : 10 ** (1 + below(8)),
        acts: (['push', 'pull', 'both'] as const)[below(3)],
      }));
      const off = shapeRing({ rectangle: [0.05, 0.05], centre: [6, 4 + 10 ** (-1 - below(5))] }, { chord: 1 });
      const f = new Float64Array(3 * plate.n);
      if (seed % 2 === 0) for (const node of [34, 35]) f[3 * node] = -5;
      else
        for (const [node, moment] of [
          [34, 3],
          [44, -3],
        ])
          f[3 * node + 1] = moment;
      const given = problem(
        [...row, { row: averageRow(plate.mesh, plate.locator, off, 'seat'), stiffness: null, acts: 'push' }],
        f,
      );
      try {
        expect(answer(given).force.every(Number.isFinite), `seed ${seed}`).toBe(true);
      } catch (thrown) {
        expect(thrown, `seed ${seed}`).toMatchObject({ code: 'MECHANISM', path: 'supports' });
        messages.add(String(thrown).replace(/ \(.*/, ''));
      }
    }
    expect([...messages].some((message) => message.includes('Nothing says where the plate lies'))).toBe(true);
  });

  it('are as two-way ones while none has to let go', () => {
    const f = new Float64Array(3 * plate.n);
    f[3 * 34] = -5;
    const at = [0, 9, 60, 69].map((node) => ({ row: atNode(node), stiffness: 1000 }));
    const both = problem(at, f);
    const push = problem(
      at.map((support) => ({ ...support, acts: 'push' as const })),
      f,
    );
    expect(answer(push).force).toEqual(answer(both).force);
  });

  it('names the supports of a plate that lifts off', () => {
    const f = new Float64Array(3 * plate.n);
    f[3 * 34] = 5;
    const given = problem(
      [0, 9, 60, 69].map((node) => ({ row: atNode(node), stiffness: null, acts: 'push' as const })),
      f,
    );
    expect(() => answer(given)).toThrowError(
      expect.objectContaining({ code: 'MECHANISM', path: 'supports', message: expect.stringContaining('S1, S2, S3') }),
    );
  });

  it('names only those that act one way', () => {
    const f = new Float64Array(3 * plate.n);
    f[3 * 34] = 5;
    // The middle of one end may hold it down; the far corners, lifted, only push.
    const given = problem(
      [0, 30, 9, 69].map((node, i) => ({
        row: atNode(node),
        stiffness: null,
        acts: i === 1 ? ('both' as const) : ('push' as const),
      })),
      f,
    );
    expect(() => answer(given)).toThrowError(expect.objectContaining({ details: { supports: ['S1', 'S3', 'S4'] } }));
  });
});
