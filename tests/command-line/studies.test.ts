import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { flathead, root } from './run.ts';

const kestrel = 'models/kestrel-both.json';
const launcher = fileURLToPath(new URL('../../packages/cli/bin/flathead.js', import.meta.url));
const plan = {
  vary: [
    { path: 'body.thickness', values: { from: 4, to: 5, count: 8 } },
    { path: 'frame.ribs[0].width', values: { from: 1.5, to: 2, count: 3 } },
  ],
};

let folder = '';
const file = (name: string): string => join(folder, name);
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'studies-'));
  await writeFile(file('plan.json'), JSON.stringify(plan));
});
afterAll(() => rm(folder, { recursive: true }));

const lines = (text: string) =>
  text
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line));

describe('flathead sweep', () => {
  it('gives the same file from two threads, from one, and merged from four parts', async () => {
    const args = ['sweep', kestrel, '--plan', file('plan.json'), '--json'];
    const whole = await flathead([...args, '--workers', '2']);
    expect({ code: whole.code, err: whole.err }).toEqual({ code: 0, err: '' });
    const [header, ...rows] = lines(whole.out);
    expect(header).toMatchObject({ flatheadStudy: 1, study: 'sweep', total: 24, plan });
    expect(rows).toHaveLength(25);
    expect(rows.slice(0, 24).map(({ index }) => index)).toEqual(Array.from({ length: 24 }, (_, i) => i));
    expect(rows[24].summary.crossings).toHaveLength(3);

    const parts: string[] = [];
    for (const part of [1, 2, 3, 4]) {
      const { code, out } = await flathead([...args, '--workers', '1', '--part', `${part}/4`]);
      expect(code).toBe(0);
      parts.push(file(`part-${part}.jsonl`));
      await writeFile(parts[part - 1], out);
    }
    const merged = await flathead(['merge', ...parts.toReversed()]);
    expect(merged.code).toBe(0);
    expect(merged.out === whole.out).toBe(true);
    const missing = await flathead(['merge', ...parts.slice(1), '--json']);
    expect(missing.code).toBe(2);
    expect(JSON.parse(missing.out)).toMatchObject({ code: 'SCHEMA', path: 'rows', details: { value: 6 } });
  });

  it('says which thickness just passes, in words', async () => {
    const { code, out } = await flathead(['sweep', kestrel, '--vary', 'body.thickness=4..5:5']);
    expect(code).toBe(0);
    expect(out).toMatch(/^ {2}body\.thickness +bow, um +worst at$/m);
    const [, value, error] =
      /bow just passes 35\.0 um with body\.thickness = (\S+) \+- (\S+) \(numerical error\); above/.exec(out)!;
    // The bow falls by 6.8 um a millimetre and is 34.7 +- 0.25 um at 4.5 mm.
    expect(Math.abs(Number(value) - (4.5 - 0.34 / 6.8))).toBeLessThan(0.01);
    expect(Math.abs(Number(error) - 0.25 / 6.8)).toBeLessThan(0.01);
  });

  it('reads a design from a table', async () => {
    await writeFile(file('design.csv'), 'body.thickness;body.material\n4.5;mica-glass-ceramic\n4.5;alumina-96\n');
    const { code, out } = await flathead(['sweep', kestrel, '--design', file('design.csv')]);
    expect(code).toBe(0);
    expect(out).toMatch(/4\.5 +mica-glass-ceramic +34\.7 +pass/);
    expect(out).toMatch(/4\.5 +alumina-96 +\d/);
  });

  it.each([
    [['--vary', 'body.thicknes=3..4:2'], 'Did you mean "thickness"'],
    [['--vary', 'fasteners[NNE].at[0]=3..4:2'], 'Did you mean "NE"'],
    [['--vary', 'body.thickness'], 'does not say what to vary'],
    [[], 'The study has no plan'],
    [['--vary', 'body.thickness=3,4', '--plan', 'x.json'], 'given twice'],
    [['--vary', 'body.thickness=3,4', '--part', '1/2'], 'Add --json'],
    [['--vary', 'body.thickness=3,4', '--json', '--part', '3/2'], 'no part of a study'],
    [['--vary', 'body.thickness=3,4', '--workers', 'many'], '--workers is'],
  ])('refuses %j with words that help', async (options, words) => {
    const { code, out, err } = await flathead(['sweep', kestrel, ...options]);
    expect(code).toBe(2);
    expect(out + err).toContain(words);
  });

  it('keeps the rows made so far when it is interrupted', async () => {
    for (const workers of ['1', '2']) {
      const args = ['sweep', kestrel, '--vary', 'body.thickness=3..6:400', '--json', '--workers', workers];
      const child = spawn(process.execPath, [launcher, ...args], { cwd: root });
      let [out, err, asked] = ['', '', false];
      const code = await new Promise<number | null>((resolve) => {
        child.stdout.setEncoding('utf8').on('data', (text: string) => {
          out += text;
          if (!asked && out.split('\n').length > 20) asked = child.kill('SIGINT');
        });
        child.stderr.setEncoding('utf8').on('data', (text: string) => {
          err += text;
        });
        child.on('close', resolve);
      });
      expect(code).toBe(3);
      expect(err).toMatch(/^Stopped after \d+ of 400 rows; these are kept\. /m);
      const [header, ...rows] = lines(out);
      expect(header.total).toBe(400);
      expect(rows.length).toBeGreaterThan(18);
      expect(rows.length).toBeLessThan(400);
      for (const row of rows) expect(row.figures.bow.value).toBeGreaterThan(0);
    }
  });
});

describe('flathead tolerance', () => {
  const args = [
    ...['tolerance', kestrel, '--samples', '32', '--indices', '--seed', '4'],
    ...['--vary', 'body.thickness=tolerance(4.5, 0.15, 3)'],
    ...['--vary', 'sites.probes.preload=normal(0.09, 0.0001)'],
  ];

  it('gives the same bytes for the same seed, whoever makes the heads', async () => {
    const [one, two] = [
      await flathead([...args, '--json', '--workers', '1']),
      await flathead([...args, '--json', '--workers', '2']),
    ];
    expect(one.code).toBe(0);
    expect(one.out === two.out).toBe(true);
    const { summary } = lines(one.out).at(-1);
    expect(summary).toMatchObject({ heads: 64, faults: 0 });
    // sigma of the bow: 6.8 um/mm x 0.05 mm and 34.7 um x 0.0001/0.09, together 0.34 um; the thickness has 0.987 of it.
    const [bow] = summary.figures;
    expect(bow.sigma / Math.hypot(0.0068 * 0.05, (0.0347 * 0.0001) / 0.09)).toBeCloseTo(1, 1);
    expect(bow.indices[0].cause).toBe('body.thickness');
    expect(bow.indices[0].total).toBeGreaterThan(0.9);
  });

  it('shows what matters most', async () => {
    const { code, out } = await flathead(args);
    expect(code).toBe(0);
    expect(out).toContain('64 heads; intervals hold with 95 % confidence');
    expect(out).toMatch(/Cpu 0\.\d+ \(0\.\d+ to 0\.\d+\), if normally distributed/);
    expect(out).toMatch(/^ {4}body\.thickness +\d\.\d+ \+- \d\.\d+ +\d\.\d+ \+- \d\.\d+ {2}#{20,}$/m);
    expect(out).toMatch(/breaks a limit: \d+ heads/);
  });
});

describe('flathead budget', () => {
  it('adds the bow of the verdict to the rest: 34.7 + 10 + hypot(15, 20) = 69.7 um', async () => {
    const rest = ['--systematic', 'tilt=0.01', '--independent', 'machining=0.015', '--independent', 'tips=0.02'];
    const fits = await flathead(['budget', kestrel, '--limit', '0.08', ...rest]);
    expect(fits.code).toBe(0);
    expect(fits.out).toMatch(/^PASS {2}total 69\.7 um against 80\.0 um: 10\.3 um left$/m);
    expect(fits.out).toMatch(/^worst case, all added linearly +79\.7 um: 0\.34 um left$/m);
    const fails = await flathead(['budget', kestrel, '--limit', '0.06', ...rest]);
    expect(fails.code).toBe(1);
    expect(fails.out).toMatch(/^FAIL {2}total 69\.7 um against 60\.0 um: 9\.66 um over$/m);
  });
});

describe('flathead sites', () => {
  it('compares rows of eight, dense and sparse', async () => {
    const patterns = ['--pattern', '8x1/3,0', '--pattern', '8x1/1,0', '--wafer', '200,3'];
    const { code, out } = await flathead(['sites', 'models/row-of-eight-moved-and-ribbed.json', ...patterns]);
    expect(code).toBe(0);
    expect(out).toMatch(/^ {2}8 x 1 {2}3, 0 +174 x 9\.50 +\d+\.\d +pass +76 +76 +469 +139 +77\.1 %$/m);
    expect(out).toMatch(/^ {2}8 x 1 {2}1, 0 +90\.0 x 9\.50 +\d+\.\d +pass +70 +70 +469 +91 +83\.8 %$/m);
    expect(out).toContain('Touchdowns are those of a plan');
  });
});

describe('docs/studies.md', () => {
  const page = readFileSync(join(root, 'docs/studies.md'), 'utf8');
  const samples = [...page.matchAll(/^```text\n\$ npx flathead (.*)\n([^`]*)^```/gm)].map(([, words, body]) => [
    words,
    body,
  ]);

  it('shows a sample of every study', () => {
    expect(new Set(samples.map(([words]) => words.split(' ')[0]))).toEqual(
      new Set(['sweep', 'tolerance', 'budget', 'place', 'sites']),
    );
  });

  it.each(samples)('shows what is printed by %s', async (line, body) => {
    const words = [...line.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, plain]) => quoted ?? plain);
    const { out } = await flathead(words);
    expect(out.trimEnd()).toBe(body.trimEnd());
  });
});
