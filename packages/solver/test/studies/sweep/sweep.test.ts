import { describe, expect, it } from 'vitest';
import type { StudyRow } from '../../../src/studies/study.ts';
import { headerLine, mergeStudies, rowLine, summaryLine } from '../../../src/studies/study-file.ts';
import type { SweepPlan } from '../../../src/studies/sweep/plan.ts';
import { sweepSteps, sweepStudy } from '../../../src/studies/sweep/sweep.ts';
import { faultOf } from '../../model/fault-of.ts';
import { thinHead } from '../small-head.ts';

function run(plan: SweepPlan, model = thinHead) {
  const steps = sweepSteps(model, plan);
  const rows = [];
  for (let next = steps.next(); ; next = steps.next()) {
    if (next.done) return { rows, summary: next.value };
    rows.push(next.value);
  }
}

const thickness: SweepPlan = { vary: [{ path: 'body.thickness', values: { from: 2, to: 5, count: 7 } }] };
const map: SweepPlan = {
  vary: [
    { path: 'body.thickness', values: [3, 3.5, 4] },
    { path: 'body.outline.rectangle[0]', values: { from: 40, to: 42, count: 3 } },
  ],
};

describe('a sweep', () => {
  const { rows, summary } = run(thickness);

  it('has a row for each value, whose bow goes with 1/t^3 as the rigidity does', () => {
    expect(rows.map(({ settings }) => settings)).toEqual([[2], [2.5], [3], [3.5], [4], [4.5], [5]]);
    const [first] = rows;
    for (const { settings, figures } of rows)
      expect(figures!.bow.value / (first.figures!.bow.value * (2 / Number(settings[0])) ** 3)).toBeCloseTo(1, 7);
  });

  it('solves for the thickness that just passes: t = t1 (w1 / limit)^(1/3)', () => {
    const [{ figures }] = rows;
    const exact = 2 * (figures!.bow.value / 0.01) ** (1 / 3);
    expect(summary.crossings).toHaveLength(1);
    const [{ value, error, slope, passes, criterion }] = summary.crossings;
    expect({ passes, criterion }).toEqual({ passes: 'above', criterion: 'bow' });
    expect(Math.abs(value - exact)).toBeLessThan(1e-5);
    // dw/dt = -3 w/t, here taken over a tenth of half a millimetre.
    expect(slope / ((-3 * 0.01) / exact)).toBeCloseTo(1, 2);
    expect(error! * Math.abs(slope)).toBeGreaterThan(0);
  });

  it('crosses a lower bound and a falling figure the other way round', () => {
    const preload: SweepPlan = { vary: [{ path: 'sites.probes.preload', values: [0.02, 0.1, 0.2] }] };
    const [{ value, passes }] = run(preload).summary.crossings;
    // The bow goes with the preload: 0.05 N give what row 5 of the thickness sweep has at 4 mm.
    const exact = (0.05 * 0.01) / rows[4].figures!.bow.value;
    expect(passes).toBe('below');
    expect(Math.abs(value - exact)).toBeLessThan(1e-5);
  });

  it('keeps what is impossible as a row that says why', () => {
    const plan: SweepPlan = { vary: [{ path: 'fasteners[NW].at[0]', values: [-15, 30, -100] }] };
    const { rows, summary } = run(plan);
    expect(rows.map(({ fault }) => fault?.code)).toEqual([undefined, 'OUTSIDE', 'OUTSIDE']);
    expect(summary.outcomes).toMatchObject({ fault: 2 });
  });

  it('refuses a path that is not there before the first row', () => {
    const fault = faultOf(() => sweepStudy(thinHead, { vary: [{ path: 'body.thicknes', values: [1, 2] }] }));
    expect(fault.message).toContain('Did you mean "thickness"');
    expect(faultOf(() => sweepStudy(thinHead, { vari: [] })).code).toBe('SCHEMA');
  });

  it('numbers rows so that what asks for a new mesh changes most seldom', () => {
    const study = sweepStudy(thinHead, map);
    const settings = [...study.rows([0, 1, 2, 3])].map((row) => row.settings);
    expect(settings).toEqual([
      [3, 40],
      [3.5, 40],
      [4, 40],
      [3, 41],
    ]);
  });

  it('gives every row the same digits alone, backwards and in its place', () => {
    const study = sweepStudy(thinHead, map);
    const together = [...study.rows(Array.from({ length: study.total }, (_, i) => i))];
    for (const row of together.toReversed()) expect([...study.rows([row.index])]).toEqual([row]);
    // Rows that solved after another mesh, not only after their neighbours.
    expect([...study.rows([8, 0, 5])]).toEqual([together[8], together[0], together[5]]);
  });
});

describe('parts of a sweep', () => {
  const study = sweepStudy(thinHead, map);
  const all = Array.from({ length: study.total }, (_, i) => i);
  const whole = [...study.rows(all)];
  const file = (rows: readonly StudyRow[], part?: { part: number; of: number }): string =>
    [headerLine(study, thinHead, part), ...rows.map(rowLine)].join('');
  const text = file(whole) + summaryLine(study.summary(whole));
  const parts = [1, 2, 3, 4].map((part) => ({
    name: `part-${part}`,
    text: file([...study.rows(all.filter((i) => i % 4 === part - 1))], { part, of: 4 }),
  }));

  it('merge to the whole, byte by byte, in any order', () => {
    expect(mergeStudies([3, 1, 0, 2].map((i) => parts[i]))).toBe(text);
    expect(mergeStudies([{ name: 'whole', text }])).toBe(text);
  });

  it('are refused when one is missing, there twice, or of another study', () => {
    expect(faultOf(() => mergeStudies(parts.slice(1))).message).toContain(
      '3 of 9 rows are missing, the first of them 0, 4, 8',
    );
    expect(faultOf(() => mergeStudies([...parts, parts[2]])).message).toContain(
      'Row 2 is there twice, the second time in part-3',
    );
    const other = headerLine(sweepStudy(thinHead, thickness), thinHead);
    expect(faultOf(() => mergeStudies([parts[0], { name: 'other', text: other }])).message).toContain(
      'other is no part of the same study as part-1: they differ in "total"',
    );
    const tampered = parts.map((part) => ({ ...part, text: part.text.replaceAll('"thickness":4', '"thickness":5') }));
    expect(faultOf(() => mergeStudies(tampered)).message).toContain('was changed');
    const aged = parts.map((part) => ({ ...part, text: part.text.replace(/"version":"[^"]+"/, '"version":"0.0.1"') }));
    expect(faultOf(() => mergeStudies(aged)).message).toContain('version 0.0.1');
  });

  it.each([
    ['', 'SCHEMA'],
    ['[1, 2]\n', 'SCHEMA'],
    ['{"flatheadStudy": 1}\n', 'SCHEMA'],
    [`${parts[0].text}{"index": "none"}\n`, 'SCHEMA'],
    [`${parts[0].text}{"index": 1, "settings": 3}\n`, 'SCHEMA'],
    [`${parts[0].text}{"index": 10}\n`, 'SCHEMA'],
    [`${parts[0].text.slice(0, -10)}`, 'NOT_JSON'],
  ])('are refused when the text is damaged: case %#', (damaged, code) => {
    const fault = faultOf(() => mergeStudies([{ name: 'damaged', text: damaged }]));
    expect(fault.code).toBe(code);
    expect(fault.message).toContain('damaged');
  });
});
