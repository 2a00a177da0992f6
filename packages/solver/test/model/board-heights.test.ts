import { describe, expect, it } from 'vitest';
import { checkHeadModel } from '../../src/model/read.ts';
import type { PlateProblem } from '../../src/plate/plate-problem.ts';
import { solveHead } from '../../src/solve-head.ts';
import { solvePlate } from '../../src/solve-plate.ts';
import { altered, twoByTwo } from './two-by-two.ts';

const corners: readonly [number, number][] = [
  [-30, 20],
  [30, 20],
  [-30, -20],
  [30, -20],
];

function plate(height: (x: number, y: number) => number, stiffness: number | null): PlateProblem {
  return {
    plate: 1,
    outline: { rectangle: [70, 50] },
    section: { E: 3e5, nu: 0.22, thickness: 4 },
    supports: corners.map(([x, y]) => ({ at: [x, y], diameter: 4, stiffness, height: height(x, y) })),
    loads: [{ over: { rectangle: [20, 10] }, force: 80 }],
    theory: 'shear',
    mesh: { size: 3 },
    report: {
      at: [
        [0, 0],
        [25, 10],
        [-12, 18],
      ],
    },
  };
}

describe('heights of supports', () => {
  it.each([null, 4e4])('in one plane move the plate as a rigid body (stiffness %s)', (stiffness) => {
    const tilt = (x: number, y: number) => 0.02 + 3e-4 * x - 5e-4 * y;
    const level = solvePlate(plate(() => 0, stiffness));
    const tilted = solvePlate(plate(tilt, stiffness));
    tilted.w.at.forEach((w, i) => {
      const [x, y] = plate(tilt, stiffness).report!.at![i];
      expect(w - tilt(x, y)).toBeCloseTo(level.w.at[i], 10);
    });
    tilted.reactions.forEach((force, i) => {
      expect(force).toBeCloseTo(level.reactions[i], 6);
    });
  });

  it('twist a free plate into w = c x y, by anticlastic bending with M_xy = D (1 - nu) c at its corners', () => {
    // Thin plate under corner forces 2 M_xy (Timoshenko and Woinowsky-Krieger 1959, art. 11): w = c x y is exact.
    const [a, b, c, E, nu, t] = [60, 40, 1e-5, 2e5, 0.3, 1];
    const { w, reactions } = solvePlate({
      plate: 1,
      outline: { rectangle: [a, b] },
      section: { E, nu, thickness: t },
      supports: [
        [-1, -1],
        [1, -1],
        [1, 1],
        [-1, 1],
      ].map(([sx, sy]) => ({ at: [(sx * a) / 2, (sy * b) / 2], height: (c * sx * sy * a * b) / 4 })),
      theory: 'thin',
      mesh: { size: 2 },
      report: {
        at: [
          [12, 9],
          [-20, 14],
        ],
      },
    });
    expect(w.at[0] / (c * 12 * 9)).toBeCloseTo(1, 2);
    expect(w.at[1] / (c * -20 * 14)).toBeCloseTo(1, 2);
    const D = (E * t ** 3) / (12 * (1 - nu ** 2));
    expect(Math.abs(reactions[0]) / (2 * D * (1 - nu) * c)).toBeCloseTo(1, 2);
  });

  it('let go of a support that only pulls when its seat lies above the plate', () => {
    const problem = plate(() => 0, 4e4);
    const supports = problem.supports!.map((support, i) => ({
      ...support,
      acts: 'pull' as const,
      height: i === 0 ? 1 : 0,
    }));
    // Loaded away from the board, the others would have to push to balance the three that pull.
    const extra = [...corners.slice(1)].map(([x, y]) => ({ at: [x + 2, y] as [number, number], stiffness: 4e4 }));
    const { reactions } = solvePlate({ ...problem, supports: [...supports, ...extra] });
    expect(reactions[0]).toBe(0);
  });
});

describe('heights of fastener seats', () => {
  const heads = (height: (x: number, y: number) => number, changes = {}) =>
    solveHead(
      checkHeadModel(
        altered(twoByTwo, {
          fasteners: twoByTwo.fasteners.map((fastener) => ({ ...fastener, height: height(...fastener.at) })),
          'sites.probes.rate': 0.4,
          ...changes,
        }),
      ),
    ).result;

  it('change nothing when they lie in a plane: the board is tilted as a whole', () => {
    const level = heads(() => 0);
    const tilted = heads((x, y) => 0.05 + 1e-3 * x + 2e-3 * y);
    expect(tilted.cases[0].bow.value).toBeCloseTo(level.cases[0].bow.value, 12);
    expect(tilted.cases[0].sites.map(({ contact }) => contact)).toEqual(
      level.cases[0].sites.map(({ contact }) => contact),
    );
    expect(tilted.verdict.remarks).toEqual(level.verdict.remarks);
  });

  it('twist the head when one lies high, and say so', () => {
    const level = heads(() => 0);
    const twisted = heads((x, y) => (x < 0 && y > 0 ? 0.04 : 0));
    // Four corners of a rectangle: one raised by h leaves h/4 either side of the plane.
    expect(twisted.verdict.remarks.join()).toMatch(/up to 10\.0 um off their own least-squares plane/);
    const change = twisted.cases[0].fasteners.map(({ reaction }, i) => reaction - level.cases[0].fasteners[i].reaction);
    expect(change[0]).toBeGreaterThan(0);
    expect(change[0] + change[1]).toBeCloseTo(0, 6);
    expect(change[0] - change[3]).toBeCloseTo(0, 6);
  });

  it('count for pads too: one raised on a level board lifts the head', () => {
    const pad = { name: 'P', at: [0, 18], diameter: 4, modulus: 1e5 };
    const flat = heads(() => 0, { seats: [pad] });
    const high = heads(() => 0, { seats: [{ ...pad, height: 0.02 }] });
    const force = ({ cases }: typeof flat) => cases[0].seats[0].force;
    expect(force(high)).toBeGreaterThan(force(flat) + 1);
    const both = heads((x, y) => 1e-3 * x + 2e-3 * y, { seats: [{ ...pad, height: 0.02 + 2e-3 * 18 }] });
    expect(force(both)).toBeCloseTo(force(high), 6);
  });
});
