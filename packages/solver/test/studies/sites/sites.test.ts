import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readHeadModel } from '../../../src/model/read.ts';
import { solveHead } from '../../../src/solve-head.ts';
import { sitesSteps, sitesStudy, withPattern } from '../../../src/studies/sites/sites.ts';
import { stretched } from '../../../src/studies/sites/stretch.ts';
import { faultOf } from '../../model/fault-of.ts';
import { twoByTwo } from '../../model/two-by-two.ts';
import { thinHead } from '../small-head.ts';

const rowOfEight = readHeadModel(
  readFileSync(new URL('../../../../../models/row-of-eight-moved-and-ribbed.json', import.meta.url), 'utf8'),
);
const wafer = { diameter: 200, edge: 3 };

describe('a head that follows its pattern', () => {
  it('keeps what lies beyond the sites at its distance, and stretches what lies between them', () => {
    const wide = stretched(twoByTwo, [8, 8], [12, 8]);
    expect(wide.body.outline).toEqual({ rectangle: [60, 46], corner: 2, centre: [0, 0] });
    expect(wide.fasteners.map(({ at }) => at)).toEqual([
      [-25, 18],
      [25, 18],
      [-25, -18],
      [25, -18],
    ]);
    const inner = { ...twoByTwo, fasteners: [{ ...twoByTwo.fasteners[0], at: [4, 0] as [number, number] }] };
    expect(stretched(inner, [8, 8], [12, 8]).fasteners[0].at).toEqual([6, 0]);
  });

  it('is the head itself when the pattern is its own', () => {
    const { bow } = solveHead(rowOfEight, { quality: 'live' }).result.cases[0];
    const same = withPattern(rowOfEight, { columns: 8, rows: 1, skip: [1, 1] }, [6, 9.5], {});
    expect(solveHead(same, { quality: 'live' }).result.cases[0].bow.value).toBeCloseTo(bow.value, 12);
  });

  it('comes back when it is stretched forth and back', () => {
    const back = stretched(stretched(rowOfEight, [46, 4], [90, 4]), [90, 4], [46, 4]);
    expect(back.fasteners).toEqual(rowOfEight.fasteners);
  });
});

describe('rows of eight, dense and sparse', () => {
  const plan = {
    patterns: [
      { columns: 8, rows: 1, skip: [3, 0] as [number, number] },
      { columns: 8, rows: 1, skip: [1, 0] as [number, number] },
    ],
    wafer,
  };
  const steps = sitesSteps(rowOfEight, plan);
  const [sparse, dense] = [steps.next().value, steps.next().value].flatMap((row) => ('stepping' in row ? [row] : []));

  // Common practice, no source: one skipped die instead of three makes a row of eight 48 % shorter, 15 dies for 29.
  it('are 29 and 15 dies long: 48 % shorter', () => {
    expect([sparse.length[0], dense.length[0]]).toEqual([29 * 6, 15 * 6]);
    expect(1 - dense.length[0] / sparse.length[0]).toBeCloseTo(0.48, 2);
  });

  it('bow on heads that follow them, each judged against its limit', () => {
    for (const { figures, outcome } of [sparse, dense])
      expect({ outcome, limit: figures!.bow.limit }).toEqual({ outcome: 'pass', limit: 0.05 });
    expect(dense.figures!.bow.value).not.toBe(sparse.figures!.bow.value);
  });

  it('step over the same dies; the shorter row loses fewer sites at the edge', () => {
    expect(dense.stepping!.dies).toBe(sparse.stepping!.dies);
    expect(dense.stepping!.lost).toBeLessThan(sparse.stepping!.lost);
    expect(dense.stepping!.touchdowns).toBeLessThan(sparse.stepping!.touchdowns);
  });
});

describe('patterns that can not be', () => {
  it('are rows that say why', () => {
    const study = sitesStudy(rowOfEight, { patterns: [{ columns: 8, rows: 1, skip: [0, 0] }], wafer });
    const [row] = study.rows([0]);
    // The field is 8.4 mm wide, the die 6 mm.
    expect(row.fault).toMatchObject({ code: 'OVERLAP' });
    expect(row.stepping!.touchdowns).toBeGreaterThan(0);
    expect(study.summary([row])).toEqual({ fewest: null });
  });

  it('are refused without the size of a die', () => {
    const plan = { patterns: [{ columns: 2, rows: 1, skip: [1, 0] }], wafer };
    expect(faultOf(() => sitesStudy(thinHead, plan)).path).toBe('die');
  });
});
