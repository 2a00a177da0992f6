import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { flathead, root } from './run.ts';

/** Processor time of a check, ms. Two seconds of wall time are promised on a quiet machine; a busy one takes longer. */
const LONGEST = 4000;

describe('flathead', () => {
  it('fails Kestrel as it is, site by site', async () => {
    const { code, out, err, spent } = await flathead(['check', 'models/kestrel-baseline.json']);
    expect({ code, err }).toEqual({ code: 1, err: '' });
    for (const site of ['A1', 'A5', 'B1', 'B5']) expect(out).toMatch(new RegExp(`^ {2}${site} +\\d`, 'm'));
    expect(out).toMatch(/^Case "mounted"/m);
    expect(out).toMatch(/^FAIL {2}/m);
    expect(out).not.toContain('\x1b[');
    expect(spent).toBeLessThan(LONGEST);
  });

  it('passes Kestrel with both cures, in one object', async () => {
    const { code, out, err, spent } = await flathead(['check', 'models/kestrel-both.json', '--json']);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    const verdict = JSON.parse(out);
    expect(verdict.outcome).toBe('pass');
    expect(verdict.cases).toHaveLength(3);
    for (const { residual, load, reaction } of verdict.cases) {
      expect(residual).toBeLessThan(1e-12);
      expect(load + reaction).toBeCloseTo(0, 6);
    }
    expect(spent).toBeLessThan(LONGEST);
  });

  it('reads stdin', async () => {
    const text = await readFile(join(root, 'models/kestrel-both.json'), 'utf8');
    const { code, out } = await flathead(['check', '-', '--case', 'mounted', '--json'], text);
    expect(code).toBe(0);
    expect(JSON.parse(out).cases.map(({ name }: { name: string }) => name)).toEqual(['mounted']);
  });

  it('solves a plate', async () => {
    const plate = {
      plate: 1,
      outline: { circle: 100 },
      section: { D: 1e6, nu: 0.3 },
      edges: [{ along: 'all', held: 'clamped' }],
      loads: [{ over: 'all', pressure: 0.01 }],
      report: { at: [[0, 0]] },
    };
    const { code, out } = await flathead(['plate', '-', '--json'], JSON.stringify(plate));
    expect(code).toBe(0);
    // Clamped circle, uniform: w = q a^4 / (64 D) (Timoshenko & Woinowsky-Krieger, Art. 16).
    expect(JSON.parse(out).w.at[0] / ((0.01 * 50 ** 4) / (64 * 1e6))).toBeCloseTo(1, 2);
  });

  it('refuses bad input with 2 and an object', async () => {
    const { code, out, err } = await flathead(['check', '-', '--json'], '{ "flathead": 1, "name": 3 }');
    expect({ code, err }).toEqual({ code: 2, err: '' });
    expect(JSON.parse(out)).toMatchObject({ code: 'SCHEMA', path: 'name', details: { count: 6 } });
  });

  it('refuses 50 MB from a pipe without reading it all', async () => {
    const { code, out, spent } = await flathead(['check', '-', '--json'], ' '.repeat(50_000_000));
    expect(code).toBe(2);
    expect(JSON.parse(out)).toMatchObject({ code: 'TOO_LARGE' });
    expect(spent).toBeLessThan(LONGEST);
  });

  it('refuses a file that is not there, in words', async () => {
    const { code, out, err } = await flathead(['check', 'models/osprey.json']);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(/osprey\.json can't be read: there is no such file\. Check the path\.\nNO_FILE\n/);
  });
});
