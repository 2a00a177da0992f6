import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { describe, expect, it } from 'vitest';
import { type DiePattern, type TouchedRows, touchdownSets, type Wafer } from '../../src/layout/touchdowns.ts';
import { faultOf } from '../model/fault-of.ts';

const written = (sets: readonly TouchedRows[]): string[] => sets.map((rows) => names(rows).join(' ')).sort();
const names = (rows: TouchedRows): string[] =>
  rows.flatMap((run, row) =>
    run === null ? [] : Array.from({ length: run[1] - run[0] + 1 }, (_, i) => `${'ABCDEFGH'[row]}${run[0] + i + 1}`),
  );
const setsOf = (pattern: DiePattern, wafer: Wafer): string[] => written(touchdownSets(pattern, wafer, 1e6, 'here'));

/** Every offset, every site, the four corners of every die: nothing clever. */
function byBruteForce({ columns, rows, die, skip }: DiePattern, { diameter, edge, centre }: Wafer): string[] {
  const radius = diameter / 2 - edge;
  const half = centre === 'corner' ? 0.5 : 0;
  const tested = (i: number, j: number): boolean =>
    [-0.5, 0.5].every((dx) =>
      [-0.5, 0.5].every((dy) => Math.hypot((i + half + dx) * die[0], (j + half + dy) * die[1]) <= radius * (1 + 1e-12)),
    );
  const reach = (axis: 0 | 1): number => Math.ceil(diameter / die[axis]) + Math.max(columns, rows) * (skip[axis] + 1);
  const found = new Set<string>();
  for (let b = -reach(1); b <= reach(1); b++)
    for (let a = -reach(0); a <= reach(0); a++) {
      const touched: string[] = [];
      for (let row = 0; row < rows; row++)
        for (let column = 0; column < columns; column++)
          if (tested(a + column * (skip[0] + 1), b - row * (skip[1] + 1)))
            touched.push(`${'ABCDEFGH'[row]}${column + 1}`);
      if (touched.length > 0) found.add(touched.join(' '));
    }
  return [...found].sort();
}

describe('sets of touched sites over a wafer, by hand', () => {
  // Dies of 2 x 2 mm within 4 mm of the centre. With a die in the middle, die (i, j) has its far corner at
  // (2|i| + 1, 2|j| + 1): (1, 1) and (3, 1) lie within 4 mm, (3, 3) and (5, 1) do not. Tested are five dies, a plus.
  const die = [2, 2] as const;
  const plus: Wafer = { diameter: 10, edge: 1 };
  // With a corner of dies in the middle the far corners are (2, 2), inside, and (4, 2), outside: a block of 2 x 2 dies.
  const block: Wafer = { ...plus, centre: 'corner' };

  it('of a pair over the plus: both, and either one with the other off it', () => {
    expect(setsOf({ columns: 2, rows: 1, die, skip: [0, 0] }, plus)).toEqual(['A1', 'A1 A2', 'A2']);
  });

  it('of 2 x 2 neighbours over the plus: no 2 x 2 dies are in it', () => {
    // With the middle die under any of the four sites its two arms lie under that site's neighbours: four sets of
    // three. Without the middle die, a single arm can lie under any site: four sets of one.
    const expected = ['A1', 'A1 A2 B1', 'A1 A2 B2', 'A1 B1 B2', 'A2', 'A2 B1 B2', 'B1', 'B2'];
    expect(setsOf({ columns: 2, rows: 2, die, skip: [0, 0] }, plus)).toEqual(expected);
  });

  it('of 2 x 2 sites with one die skipped, over the plus: opposite arms are a pair', () => {
    // Arms (-1, 0) and (1, 0) are two dies apart: a row of two sites, upper or lower. Likewise a column. A die alone
    // lies under any site.
    const expected = ['A1', 'A1 A2', 'A1 B1', 'A2', 'A2 B2', 'B1', 'B1 B2', 'B2'];
    expect(setsOf({ columns: 2, rows: 2, die, skip: [1, 1] }, plus)).toEqual(expected);
  });

  it('of 2 x 2 neighbours over the block: all, a side, a corner', () => {
    const expected = ['A1', 'A1 A2', 'A1 A2 B1 B2', 'A1 B1', 'A2', 'A2 B2', 'B1', 'B1 B2', 'B2'];
    expect(setsOf({ columns: 2, rows: 2, die, skip: [0, 0] }, block)).toEqual(expected);
  });

  it('of 2 x 2 sites with one die skipped, over the block: one at a time', () => {
    expect(setsOf({ columns: 2, rows: 2, die, skip: [1, 1] }, block)).toEqual(['A1', 'A2', 'B1', 'B2']);
  });

  it('counts a die whose corner is exactly on the edge, and not one that is a micrometre out', () => {
    // Far corner of (1, 0) at (3, 1).
    const pair: DiePattern = { columns: 2, rows: 1, die, skip: [0, 0] };
    expect(setsOf(pair, { diameter: 2 * Math.sqrt(10), edge: 0 })).toContain('A1 A2');
    expect(setsOf(pair, { diameter: 2 * Math.sqrt(10) - 0.001, edge: 0 })).toEqual(['A1', 'A2']);
  });
});

describe('sets of touched sites over a wafer', () => {
  it.each([1, 2, 3, 4, 5, 6, 7, 8])('are those of every offset tried, for random patterns, seed %i', (seed) => {
    const random = xoroshiro128plus(seed);
    const pick = (low: number, high: number): number => low + ((random.next() >>> 0) % (high - low + 1));
    for (let round = 0; round < 12; round++) {
      const pattern: DiePattern = {
        columns: pick(1, 6),
        rows: pick(1, 4),
        die: [pick(20, 70) / 10, pick(20, 70) / 10],
        skip: [pick(0, 3), pick(0, 3)],
      };
      const wafer: Wafer = { diameter: pick(16, 90), edge: pick(0, 2), centre: pick(0, 1) === 0 ? 'die' : 'corner' };
      const expected = byBruteForce(pattern, wafer);
      if (expected.length === 0)
        expect(faultOf(() => touchdownSets(pattern, wafer, 1e6, 'here')).code).toBe('OUT_OF_RANGE');
      else expect(setsOf(pattern, wafer), JSON.stringify([pattern, wafer])).toEqual(expected);
    }
  });

  it('come fullest first, each once', () => {
    const sets = touchdownSets({ columns: 3, rows: 2, die: [5, 4], skip: [1, 0] }, { diameter: 100, edge: 3 }, 400, '');
    const counts = sets.map((rows) => names(rows).length);
    expect(counts).toEqual([...counts].sort((a, b) => b - a));
    expect(counts[0]).toBe(6);
    expect(new Set(written(sets)).size).toBe(sets.length);
  });

  it('have mirror images of their own', () => {
    const mirrored = (set: string): string =>
      set
        .split(' ')
        .map((name) => `${name[0]}${4 - Number(name[1])}`)
        .sort()
        .join(' ');
    const sets = setsOf({ columns: 3, rows: 2, die: [5, 4], skip: [1, 0] }, { diameter: 100, edge: 3 });
    expect(sets.map(mirrored).sort()).toEqual(sets);
    expect(sets.some((set) => mirrored(set) !== set)).toBe(true);
  });

  it('are refused beyond the most, and on a wafer of too many dies', () => {
    const pattern: DiePattern = { columns: 6, rows: 4, die: [5, 4], skip: [1, 1] };
    const wafer = { diameter: 300, edge: 3 };
    const count = touchdownSets(pattern, wafer, 1e6, '').length;
    expect(touchdownSets(pattern, wafer, count, '')).toHaveLength(count);
    expect(faultOf(() => touchdownSets(pattern, wafer, count - 1, 'here'))).toMatchObject({
      code: 'TOO_LARGE',
      path: 'here',
    });
    expect(faultOf(() => touchdownSets({ ...pattern, die: [5, 0.01] }, wafer, 400, 'here')).code).toBe('TOO_LARGE');
  });
});
