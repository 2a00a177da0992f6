import { describe, expect, it } from 'vitest';
import { soft, stiff } from './heads.ts';
import { runHere } from './run-here.ts';

describe('flathead check', () => {
  it('prints a table per case and a verdict, and ends with 0 on a pass', async () => {
    const { code, out, err } = await runHere(['check', '-'], { input: JSON.stringify(stiff) });
    expect(code).toBe(0);
    expect(err).toBe('');
    expect(out).toMatch(/^One site {2}1 site, 3 fasteners, 2 load cases\n/);
    expect(out).toMatch(/Case "mounted": 5\.0 N on the sites, largest bow [\d.]+ um at site A1/);
    expect(out).toMatch(/^ {2}A1 +[\d.]+ +\d+ % +-?[\d.]+, -?[\d.]+ +[\d.]+$/m);
    expect(out).toMatch(/^ {2}NW +-11\.00, 11\.00 +-[\d.]+ +[\d.]+ +\d+$/m);
    expect(out).toMatch(/Case "touched": 0\.0 N/);
    expect(out).toMatch(/^PASS {2}Site A1 bows .* inside the 10\.0 um limit\.$/m);
    expect(out).toMatch(
      /PASS {2}bow .* \+- .* against 10\.0 um, worst at site A1 in case "mounted"; transverse shear adds/,
    );
    expect(out).toMatch(/PASS {2}flatness/);
    // Nothing about colour or how it was solved when nobody asked.
    expect(out).not.toContain('\x1b[');
    expect(out).not.toMatch(/residual/);
  });

  it('ends with 1 on a fail', async () => {
    const { code, out } = await runHere(['check', '-'], { input: JSON.stringify(soft) });
    expect(code).toBe(1);
    expect(out).toMatch(/^FAIL {2}Site A1 bows .* over the 1\.00 um limit\.$/m);
  });

  it('ends with 0 on a marginal head, and says so', async () => {
    const failed = await runHere(['check', '-', '--json'], { input: JSON.stringify(soft) });
    const bow = JSON.parse(failed.out).verdict.criteria[0].value;
    const input = JSON.stringify({ ...soft, limits: { bow: bow * 1.1, margin: 0.5 } });
    const { code, out } = await runHere(['check', '-'], { input });
    expect(code).toBe(0);
    expect(out).toMatch(/^MARGINAL {2}Site A1/m);
  });

  it('prints one verdict object with --json', async () => {
    const { code, out } = await runHere(['check', '-', '--json'], { input: JSON.stringify(soft) });
    const verdict = JSON.parse(out);
    expect(code).toBe(1);
    expect(Object.keys(verdict)).toEqual(['name', 'outcome', 'verdict', 'cases', 'mesh', 'dofs', 'timings']);
    expect(verdict).toMatchObject({ name: 'Soft', outcome: 'fail' });
    expect(verdict.verdict.criteria[0]).toMatchObject({
      criterion: 'bow',
      outcome: 'fail',
      limit: 0.001,
      case: 'mounted',
      site: 'A1',
    });
    const [mounted, touched] = verdict.cases;
    expect(Object.keys(mounted).sort()).toEqual(
      [
        'bow',
        'fastenerPlane',
        'fasteners',
        'flatness',
        'load',
        'name',
        'reaction',
        'residual',
        'sites',
        'strength',
        'tilt',
      ].sort(),
    );
    expect(mounted.load).toBeCloseTo(5, 9);
    expect(mounted.reaction).toBeCloseTo(-5, 9);
    expect(mounted.fasteners.map(({ name }: { name: string }) => name)).toEqual(['NW', 'NE', 'S']);
    expect(touched.load).toBe(0);
    expect(verdict.mesh.nodes * 3).toBe(verdict.dofs);
  });

  it('solves one case with --case', async () => {
    const { out } = await runHere(['check', '-', '--case', 'touched', '--json'], { input: JSON.stringify(stiff) });
    expect(JSON.parse(out).cases.map(({ name }: { name: string }) => name)).toEqual(['touched']);
    const { code, err } = await runHere(['check', '-', '--case', 'tuched'], { input: JSON.stringify(stiff) });
    expect(code).toBe(2);
    expect(err).toMatch(/no case "tuched"\. Did you mean "touched"/);
  });

  it('says how it was solved with -v', async () => {
    const { out } = await runHere(['check', '-', '-v'], { input: JSON.stringify(stiff) });
    expect(out).toMatch(
      /\d+ nodes, \d+ elements, \d+ unknowns, smallest angle \d+\.\d deg, scaled residual \d\.\de-1\d/,
    );
    expect(out).toMatch(/mesh [\d.]+ ms, .*total [\d.]+ ms/);
  });

  it('prints strength where a limit asks for it, or with -v', async () => {
    const limits = { ...stiff.limits, strengthFactor: 3, failureProbability: 1e-6 };
    const { code, out } = await runHere(['check', '-'], { input: JSON.stringify({ ...stiff, limits }) });
    expect(code).toBe(0);
    expect(out).toMatch(
      /^ {2}part +stress +MPa +face +at x, y, mm +near +strength, MPa +factor +failure probability$/m,
    );
    expect(out).toMatch(
      /^ {2}body +principal +[\d.]+ +(board|device) +-?[\d.]+, -?[\d.]+ +\w+ +300 +[\d.]+ +[\d.]+e-\d+$/m,
    );
    expect(out).toMatch(/PASS {2}strength [\d.]+ \+- [\d.]+ against at least 3\.00, worst near \w+ in case "mounted"/);
    expect(out).toMatch(/PASS {2}failure probability [\d.]+e-\d+ \+- [\d.]+e-\d+ against 1\.00e-6, worst near/);

    const plain = await runHere(['check', '-'], { input: JSON.stringify(stiff) });
    expect(plain.out).not.toMatch(/principal/);
    const verbose = await runHere(['check', '-', '-v'], { input: JSON.stringify(stiff) });
    expect(verbose.out).toMatch(/^ {2}body +principal/m);
    const json = await runHere(['check', '-', '--json'], { input: JSON.stringify(stiff) });
    const [body, ...others] = JSON.parse(json.out).cases[0].strength;
    expect(others).toEqual([]);
    expect(body).toMatchObject({ part: 'body', material: 'alumina-96', measure: 'principal', strength: 300 });
    expect(body.factor).toBeCloseTo(300 / body.stress, 9);
  });

  it('colours and reports progress on a screen only', async () => {
    const { out, err } = await runHere(['check', '-'], { input: JSON.stringify(soft), screen: true });
    expect(out).toContain('\x1b[31m');
    expect(err).toContain('solve ...');
    expect(err.endsWith('\r\x1b[K')).toBe(true);
  });
});
