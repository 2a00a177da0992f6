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

  it('prints the contact left to the probes where the model gives their rate', async () => {
    const probes = { ...stiff.sites.probes, touchdown: 0.12, rate: 0.4 };
    const sites = { ...stiff.sites, probes };
    const limits = { ...stiff.limits, contactForce: 0.02 };
    const { out } = await runHere(['check', '-'], { input: JSON.stringify({ ...stiff, sites, limits }) });
    const [mounted, touched] = out.match(/^ {2}A1 .*$/gm)!.map((line) => line.trim().split(/ +/));
    expect(out).toMatch(/flat within, um +contact, N +mean, N +spread, N +left, mm$/m);
    expect(mounted.slice(-4).map(Number)).toEqual([0.05, 0.05, 0, 0.125].map((value) => expect.closeTo(value, 3)));
    expect(touched.slice(-4)).toEqual(['0.1200', '0.1200', '0.0000', '0.300']);
    expect(out).toMatch(
      /PASS {2}contact 0\.0\d+ \+- .* N against at least 0\.0200 N, worst at site A1 in case "mounted"$/m,
    );

    const { touchdown: _, ...unknown } = probes;
    const input = JSON.stringify({ ...stiff, sites: { ...sites, probes: unknown } });
    expect((await runHere(['check', '-', '--case', 'touched'], { input })).out).toMatch(/^ {2}A1 .* - +- +- +-$/m);
    const json = JSON.parse((await runHere(['check', '-', '--json'], { input })).out);
    expect(json.cases[0].sites[0].contact.board.minimum).toBeCloseTo(0.05, 3);
    expect(json.cases[1].sites[0].contact).toEqual({ board: null, device: null });
  });

  it('prints the worst few of the touchdowns over a wafer, and all of them with --json', async () => {
    const { pitch: _, ...sites } = stiff.sites;
    const model = {
      ...stiff,
      body: { ...stiff.body, outline: { rectangle: [50, 40] } },
      sites: { ...sites, columns: 2, rows: 2, die: [7, 7], skip: [0, 0] },
      fasteners: [
        ...stiff.fasteners.map(({ at: [x, y], ...rest }) => ({ ...rest, at: [1.7 * x, 1.5 * y] })),
        { name: 'E', at: [22, 0], screw: 'M2' },
      ],
      cases: [{ name: 'mounted' }, { name: 'wafer edge', touched: { wafer: { diameter: 100, edge: 3 } } }],
    };
    const input = JSON.stringify(model);
    const { out } = await runHere(['check', '-'], { input });
    const { cases } = JSON.parse((await runHere(['check', '-', '--json'], { input })).out);
    const family = cases.filter((load: { family?: string }) => load.family === 'wafer edge');
    // All, four of three, sides, corners; diagonal pairs don't occur.
    expect(family.map(({ name }: { name: string }) => name).sort()).toEqual(
      [
        'all',
        'A1',
        'A2',
        'B1',
        'B2',
        'A1 A2',
        'B1 B2',
        'A1 B1',
        'A2 B2',
        'A1 A2 B1',
        'A1 A2 B2',
        'A1 B1 B2',
        'A2 B1 B2',
      ]
        .map((set) => `wafer edge: ${set}`)
        .sort(),
    );
    expect(out).toMatch(/^One site {2}4 sites, 4 fasteners, 1 load case and 13 touchdowns over a wafer$/m);
    const bows = family
      .map(({ bow }: { bow: { value: number } }) => Math.abs(bow.value))
      .sort((a: number, b: number) => b - a);
    const printed = [...out.matchAll(/^Case "wafer edge: .*largest bow (-?[\d.]+) um/gm)].map(([, um]) =>
      Math.abs(Number(um)),
    );
    expect(printed).toHaveLength(3);
    printed.forEach((um, i) => {
      expect(um).toBeCloseTo(1000 * bows[i], 1);
    });
    expect(out).toMatch(
      /^Case "wafer edge": 13 sets of touched sites, largest bow 0\.00 to [\d.]+ um; the worst 3 by bow/m,
    );
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
        'seats',
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

  it('shows preloaded joints beside the reactions, their terms with -v, and all of it as JSON', async () => {
    const bolt = { torque: 150, into: 'stainless-304', engagement: 3 };
    const fasteners = stiff.fasteners.map((each, i) => (i === 2 ? each : { ...each, ...bolt }));
    const head = { ...stiff, fasteners, limits: { ...stiff.limits, fastener: 0.9 } };
    const { code, out } = await runHere(['check', '-', '-v'], { input: JSON.stringify(head) });
    expect(code).toBe(0);
    expect(out).toMatch(/stiffness, N\/mm +preload, N +screw, N +clamp left, N +of proof +of stripping +joint$/m);
    // 150 / (0.2 * 2) = 375 N, give or take 30 %.
    expect(out).toMatch(/^ {2}NW .* 263 to 488 +263 to 488 +2\d\d to 48\d +\d+ % +\d+ % +closed$/m);
    expect(out).toMatch(/^ {2}S +0\.00, -11\.00 +-[\d.]+ +[\d.]+ +\d+$/m);
    expect(out).toMatch(/fasteners 0\.5\d\d \+- .* against 0\.900, worst at fastener \w+ \(proof\) in case "mounted"/);
    expect(out).toMatch(/Note: Fastener S is not judged: no preload is given\./);
    expect(out).toMatch(/grip, mm +screw head +free thread +engaged thread +tapped part +clamped cone +seat$/m);
    expect(out).toMatch(/^ {2}NW +4\.00( +[\d.]+){6}$/m);

    const json = JSON.parse((await runHere(['check', '-', '--json'], { input: JSON.stringify(head) })).out);
    const [{ terms, joint }, , { joint: none }] = json.cases[0].fasteners;
    expect(Object.keys(terms.compliance)).toEqual(['head', 'free', 'engaged', 'tapped', 'clamped', 'seat']);
    expect(joint).toMatchObject({ preload: { low: 262.5, high: 487.5 }, opens: false });
    expect(none).toBeNull();
    const quiet = await runHere(['check', '-'], { input: JSON.stringify(stiff) });
    expect(quiet.out).not.toMatch(/preload|grip/);
  });

  it('shows what seats carry and where the head has lifted off them', async () => {
    const seats = [
      { name: 'rim', shape: { rectangle: [24, 2], centre: [0, 13.5] }, modulus: 1e4 },
      { name: 'middle', at: [0, -5], diameter: 2, stiffness: 1e4 },
    ];
    const { out } = await runHere(['check', '-'], { input: JSON.stringify({ ...stiff, seats }) });
    expect(out).toMatch(/^ {2}seat +contact, N +pressure up to, MPa +lifted off +around x, y, mm$/m);
    expect(out).toMatch(/^ {2}rim +\d+\.\d +[\d.]+ +\d+ %/m);
    expect(out).toMatch(/^ {2}middle +0\.0 +0 +100 % +0\.00, -5\.00$/m);
    const quiet = await runHere(['check', '-'], { input: JSON.stringify(stiff) });
    expect(quiet.out).not.toMatch(/lifted off/);
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
