import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { describe, expect, it } from 'vitest';
import type { Point } from '../../../src/geometry/point.ts';
import { headField } from '../../../src/studies/placement/head-field.ts';
import { leastAssignment } from '../../../src/studies/placement/least-assignment.ts';
import { placedAs } from '../../../src/studies/placement/names.ts';
import type { PlacementPlan } from '../../../src/studies/placement/plan.ts';
import { bare } from './heads.ts';

/** The bare head with two more fasteners on the x axis. */
const six = {
  ...bare,
  fasteners: [
    ...bare.fasteners,
    { ...bare.fasteners[0], name: 'W', at: [-18, 0] as [number, number] },
    { ...bare.fasteners[0], name: 'E', at: [18, 0] as [number, number] },
  ],
};

function namesAt(points: readonly Point[], plan: PlacementPlan): Record<string, Point> {
  const placement = placedAs(six, headField(six, plan), points, plan);
  return Object.fromEntries(placement.map(({ name, at }) => [name, at]));
}

describe('names of the fasteners placed', () => {
  const corners: Point[] = [
    [11, -9],
    [-11, -9],
    [11, 9],
    [-11, 9],
  ];

  it('stay in their corner, and the pair on one axis is the pair on the other', () => {
    const names = namesAt([[0, -15], ...corners, [0, 15]], { mirror: 'both' });
    expect(names).toEqual({ NW: [-11, 9], NE: [11, 9], SW: [-11, -9], SE: [11, -9], W: [0, 15], E: [0, -15] });
  });

  it('make the whole way of all the least without mirrors', () => {
    // Nearest first would be NW to (-18, 9), 5 mm, and W to (-4, 15), 20.5 mm; this way they go 14 and 9.
    const names = namesAt(
      [
        [-18, 9],
        [-4, 15],
        [18, 14],
        [-18, -14],
        [18, -14],
        [18, 0],
      ],
      {},
    );
    expect(names).toEqual({ NW: [-4, 15], NE: [18, 14], SW: [-18, -14], SE: [18, -14], W: [-18, 9], E: [18, 0] });
  });

  it('are new ones where the model has too few, and left out where it has too many', () => {
    expect(Object.keys(namesAt(corners, { mirror: 'both' }))).toEqual(['NW', 'NE', 'SW', 'SE']);
    const more: Point[] = [...corners, [17, 0], [-17, 0], [0, 15], [0, -15]];
    const names = namesAt(more, { mirror: 'both', count: 8 });
    expect(names).toMatchObject({ NW: [-11, 9], W: [-17, 0], E: [17, 0], F7: [0, 15], F8: [0, -15] });
  });
});

describe('the least assignment', () => {
  it('is the least of all permutations', () => {
    const generator = xoroshiro128plus(3);
    const pick = () => (generator.next() >>> 0) / 2 ** 32;
    for (const [rows, columns] of [
      [1, 1],
      [4, 4],
      [3, 6],
      [6, 3],
      [5, 5],
    ])
      for (let trial = 0; trial < 10; trial++) {
        const cost = Array.from({ length: rows }, () => Array.from({ length: columns }, pick));
        const taken = leastAssignment(rows, columns, (i, j) => cost[i][j]);
        const pairs = taken.flatMap((j, i) => (j < 0 ? [] : [[i, j]]));
        expect(pairs).toHaveLength(Math.min(rows, columns));
        expect(new Set(pairs.map(([, j]) => j)).size).toBe(pairs.length);
        const sum = pairs.reduce((total, [i, j]) => total + cost[i][j], 0);
        expect(sum).toBeCloseTo(least(cost, 0, new Set(), Math.min(rows, columns)), 12);
      }
  });
});

/** By trying all: each row takes a free column or, where rows are more, none. */
function least(cost: number[][], row: number, used: ReadonlySet<number>, left: number): number {
  if (left === 0) return 0;
  if (row === cost.length) return Infinity;
  const skip = cost.length - row > left ? least(cost, row + 1, used, left) : Infinity;
  return Math.min(
    skip,
    ...cost[row].map((value, j) =>
      used.has(j) ? Infinity : value + least(cost, row + 1, new Set([...used, j]), left - 1),
    ),
  );
}
