import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { describe, expect, it } from 'vitest';
import { type SteppingPlan, steppingPlan } from '../../src/layout/stepping-plan.ts';
import type { DiePattern, Wafer } from '../../src/layout/touchdowns.ts';

/** The tested dies as a picture, one letter per touchdown; a die touched twice shows `#`, an untouched one `.`. */
function picture({ touchdowns }: SteppingPlan, { columns, rows, skip, die }: DiePattern, wafer: Wafer): string[] {
  const reach = Math.ceil(wafer.diameter / Math.min(...die));
  const half = wafer.centre === 'corner' ? 0.5 : 0;
  const isTested = (i: number, j: number): boolean =>
    Math.hypot((Math.abs(i + half) + 0.5) * die[0], (Math.abs(j + half) + 0.5) * die[1]) <=
    (wafer.diameter / 2 - wafer.edge) * (1 + 1e-12);
  const marks = new Map<string, string>();
  touchdowns.forEach(([left, top], t) => {
    for (let row = 0; row < rows; row++)
      for (let column = 0; column < columns; column++) {
        const key = `${left + column * (skip[0] + 1)},${top - row * (skip[1] + 1)}`;
        marks.set(key, marks.has(key) ? '#' : String.fromCharCode(97 + (t % 26)));
      }
  });
  const lines: string[] = [];
  for (let j = reach; j >= -reach; j--) {
    let line = '';
    for (let i = -reach; i <= reach; i++) line += isTested(i, j) ? (marks.get(`${i},${j}`) ?? '.') : ' ';
    if (line.trim() !== '') lines.push(line.slice(reach - 4, reach + 5).trimEnd());
  }
  return lines;
}

const die = [10, 10] as const;
// Dies of 10 x 10 mm within 35 mm of the centre, one in the middle: die (i, j) lies inside while
// (10|i| + 5)^2 + (10|j| + 5)^2 <= 1225. Row 0: 35^2 + 5^2 > 1225, 25^2 + 5^2 = 650: |i| <= 2; row 1: 25^2 + 15^2 = 850: 2;
// row 2: 25^2 + 25^2 = 1250 > 1225, 15^2 + 25^2 = 850: 1; row 3: 5^2 + 35^2 > 1225. In all 5 + 2 x 5 + 2 x 3 = 21.
const wafer: Wafer = { diameter: 76, edge: 3 };

describe('stepping over a small wafer, by hand', () => {
  it('of a single site: 21 touchdowns', () => {
    const plan = steppingPlan({ columns: 1, rows: 1, die, skip: [0, 0] }, wafer, '');
    expect(plan).toMatchObject({ dies: 21, lost: 0, least: 21 });
    expect(plan.touchdowns).toHaveLength(21);
  });

  it('of three neighbours in a row: rows of 3, 5, 5, 5, 3 take 1 + 2 + 2 + 2 + 1, three sites are lost', () => {
    const pattern = { columns: 3, rows: 1, die, skip: [0, 0] } as const;
    const plan = steppingPlan(pattern, wafer, '');
    expect(plan).toMatchObject({ dies: 21, lost: 3, least: 8 });
    expect(plan.touchdowns).toHaveLength(8);
    expect(picture(plan, pattern, wafer)).toEqual([
      '   hhh', // rows from the far side
      '  fffgg',
      '  dddee',
      '  bbbcc',
      '   aaa',
    ]);
  });

  it('of a pair with one die skipped: interleaved, a row of 5 takes places 0, 4, 1 of it; a row of 3 two', () => {
    const pattern = { columns: 2, rows: 1, die, skip: [1, 0] } as const;
    const plan = steppingPlan(pattern, wafer, '');
    // 3 + 3 + 3 + 2 + 2 = 13 touchdowns of 2 sites, 26 - 21 lost.
    expect(plan).toMatchObject({ dies: 21, lost: 5, least: 13 });
    expect(plan.touchdowns).toHaveLength(13);
    // A place of 0 touches 0 and 2 of a row of 5, then 4; a place of 1 touches 1 and 3.
    expect(picture(plan, pattern, wafer)).toEqual(['   lml', '  ikikj', '  fhfhg', '  ceced', '   aba']);
  });

  it('of 2 x 2 neighbours: at least 7, from every second row of 5, 5, 3 or of 5, 3; 8 by the plan', () => {
    const pattern = { columns: 2, rows: 2, die, skip: [0, 0] } as const;
    const plan = steppingPlan(pattern, wafer, '');
    // Rows 2, 0, -2 (3, 5, 3 dies) share no touchdown: 2 + 3 + 2 = 7 at least. Bands {2}, {1, 0}, {-1, -2}: 2 + 3 + 3.
    expect(plan).toMatchObject({ dies: 21, least: 7 });
    expect(plan.touchdowns).toHaveLength(8);
    expect(picture(plan, pattern, wafer).join('')).not.toMatch(/[#.]/);
  });
});

describe('stepping over any wafer', () => {
  it('tests every die once and never beats the bound, in 200 random patterns', () => {
    const generator = xoroshiro128plus(11);
    const pick = (from: number, to: number): number => from + ((generator.next() >>> 0) % (to - from + 1));
    for (let i = 0; i < 200; i++) {
      const pattern: DiePattern = {
        columns: pick(1, 6),
        rows: pick(1, 4),
        die: [pick(4, 12), pick(4, 12)],
        skip: [pick(0, 3), pick(0, 2)],
      };
      const random: Wafer = { diameter: pick(60, 150), edge: pick(0, 5), centre: pick(0, 1) === 0 ? 'die' : 'corner' };
      const plan = steppingPlan(pattern, random, '');
      const seen = picture(plan, pattern, random).join('');
      expect(seen, JSON.stringify([pattern, random])).not.toMatch(/[#.]/);
      expect(plan.lost).toBe(plan.touchdowns.length * pattern.columns * pattern.rows - plan.dies);
      expect(plan.touchdowns.length).toBeGreaterThanOrEqual(plan.least);
      if (pattern.rows === 1 || pattern.columns === 1) expect(plan.touchdowns.length).toBe(plan.least);
    }
  });
});
