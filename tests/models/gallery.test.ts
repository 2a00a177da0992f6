import { readdirSync, readFileSync } from 'node:fs';
import { type HeadModel, type Outcome, readHeadModel, readPlateProblem, solveHead, solvePlate } from '@flathead/solver';
import { describe, expect, it } from 'vitest';

const models = new URL('../../models/', import.meta.url);
const text = (file: string): string => readFileSync(new URL(file, models), 'utf8');
const files = (folder: string): string[] =>
  readdirSync(new URL(folder, models))
    .filter((name) => name.endsWith('.json'))
    .sort();
const bow = (model: HeadModel): number => solveHead(model, { quality: 'live' }).result.verdict.criteria[0].value;

/** Element size for comparison, mm. */
const FINE = 0.8;

/** What each demo head is there to show; Kestrel has its own test. */
const outcomes: Readonly<Record<string, Outcome>> = {
  'heron.json': 'pass',
  'plover.json': 'pass',
  'row-of-eight-far-fasteners.json': 'fail',
  'row-of-eight-moved-and-ribbed.json': 'pass',
  'wren.json': 'pass',
};

describe('model gallery', () => {
  it('knows every head', () => {
    expect(files('.').filter((name) => !name.startsWith('kestrel'))).toEqual(Object.keys(outcomes));
  });

  it.each(Object.entries(outcomes))('%s: %s', (file, outcome) => {
    const { verdict, cases } = solveHead(readHeadModel(text(file))).result;
    expect(verdict.outcome).toBe(outcome);
    expect(verdict.remarks.filter((remark) => remark.includes('keep-out'))).toEqual([]);
    for (const { load, reaction, residual } of cases) {
      expect(Math.abs(load + reaction)).toBeLessThan(1e-9 * Math.max(1, load));
      expect(residual).toBeLessThan(1e-12);
    }
  });

  it.each(files('.'))('%s states an error that tells how far a mesh of ten times the nodes is off', (file) => {
    const model = readHeadModel(text(file));
    const stated = solveHead(model).result;
    const fine = solveHead({ ...model, mesh: { size: FINE } }, { quality: 'live' }).result;
    expect(fine.dofs).toBeGreaterThan(3.5 * stated.dofs);
    stated.verdict.criteria.forEach(({ criterion, value, error }, i) => {
      const off = Math.abs(fine.verdict.criteria[i].value - value);
      expect(off, criterion).toBeLessThan(2 * error!);
      expect(error, criterion).toBeLessThan(0.01 * value);
    });
  });

  it.each(files('.'))('%s points an editor to its schema and says what it is for', (file) => {
    const { $schema, note } = readHeadModel(text(file));
    expect(readFileSync(new URL($schema!, new URL(file, models)), 'utf8')).toContain('Flathead head model');
    expect(note!.length).toBeGreaterThan(20);
  });
});

describe('a row of eight with 600 probes a site (common practice, no source)', () => {
  const far = readHeadModel(text('row-of-eight-far-fasteners.json'));
  const both = readHeadModel(text('row-of-eight-moved-and-ribbed.json'));

  it('exceeds 50 um in the middle with far fasteners, and keeps it with both cures', () => {
    const { criteria } = solveHead(far).result.verdict;
    expect(criteria[0]).toMatchObject({ outcome: 'fail', limit: 0.05, case: 'mounted' });
    expect(criteria[0].site).toMatch(/^A[45]$/);
    expect(bow(both)).toBeLessThan(0.05);
  });

  it('is helped by either cure, but not enough', () => {
    for (const one of [
      { ...far, frame: both.frame },
      { ...far, fasteners: both.fasteners },
    ]) {
      expect(bow(one)).toBeLessThan(0.9 * bow(far));
      expect(bow(one)).toBeGreaterThan(0.05);
    }
  });

  it('has sites, body and frame of one kind', () => {
    const { sites, body } = both;
    expect(far).toMatchObject({ sites, body });
    expect(sites).toMatchObject({ columns: 8, rows: 1, probes: { count: 600 } });
  });
});

describe('plate problems', () => {
  const solve = (name: string) => {
    const problem = readPlateProblem(text(`plates/${name}.json`));
    return { problem, result: solvePlate(problem) };
  };
  const D = (E: number, nu: number, t: number) => (E * t ** 3) / (12 * (1 - nu ** 2));

  it('solves every one, and each has a note', () => {
    for (const file of files('plates/')) {
      const { problem, result } = solve(file.replace('.json', ''));
      expect(problem.note).not.toBe('');
      expect(result.residual).toBeLessThan(1e-12);
      expect(result.error.estimate).toBeLessThan(0.01);
    }
  });

  it('simply supported square: Navier series (Timoshenko and Woinowsky-Krieger, Table 8)', () => {
    const { w, moments } = solve('simply-supported-square').result;
    expect(Math.abs(w.at[0] / ((0.00406235 * 0.001 * 100 ** 4) / D(2e5, 0.3, 1)) - 1)).toBeLessThan(0.005);
    expect(Math.abs(moments.at[0].mxx / (0.0478864 * 0.001 * 100 ** 2) - 1)).toBeLessThan(0.02);
  });

  it('square on its corners: derived (Ritz)', () => {
    const { w } = solve('square-on-its-corners').result;
    const unit = (0.001 * 80 ** 4) / D(2e5, 0.3, 2);
    expect(Math.abs(w.at[0] / (0.025507 * unit) - 1)).toBeLessThan(0.005);
    expect(Math.abs(w.at[1] / (0.017747 * unit) - 1)).toBeLessThan(0.005);
  });

  it('point load on a foundation: P l^2/(8 D) (Timoshenko and Woinowsky-Krieger, Art. 57)', () => {
    expect(
      Math.abs(solve('point-load-on-foundation').result.w.at[0] / ((1000 * 10 ** 2) / (8 * 1e6)) - 1),
    ).toBeLessThan(0.005);
  });

  it('disc with a rim: three alike pads share the load', () => {
    for (const reaction of solve('ring-with-a-stiff-rim').result.reactions) expect(reaction).toBeCloseTo(-40, 2);
  });
});
