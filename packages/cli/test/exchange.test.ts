import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { runHere } from './run-here.ts';

const folder = mkdtempSync(join(tmpdir(), 'flathead-exchange-'));
const root = join(import.meta.dirname, '../../..');
const at = (name: string): string => join(folder, name);
afterAll(() => rmSync(folder, { recursive: true }));

/** The commands of docs/exchange.md, in order, on files in a folder of their own. */
const commands = [
  ...readFileSync(join(root, 'docs/exchange.md'), 'utf8').matchAll(/^flathead (import|export) (.+)$/gm),
].map(([, verb, rest]) => [
  verb,
  ...rest.split(' ').map((word) => (/\.(csv|dxf|json|vtu|glb|stl|xlsx|svg)$/.test(word) ? at(word) : word)),
]);

describe('docs/exchange.md', () => {
  it('shows commands that run, first those that write', { timeout: 120_000 }, async () => {
    writeFileSync(at('head.json'), readFileSync(join(root, 'models/kestrel-both.json')));
    writeFileSync(at('points.csv'), 'x,y\n0,0\n5,5\n');
    writeFileSync(at('board.csv'), 'x,y,z (um)\n-60,-40,0\n60,-40,10\n-60,40,5\n60,40,15\n');
    const order = [...commands].sort(([a], [b]) => (a === b ? 0 : a === 'export' ? -1 : 1));
    expect(order).toHaveLength(17);
    for (const command of order) {
      const { code, err } = await runHere(command);
      expect(code, `${command.join(' ')}: ${err}`).toBe(0);
    }
    const head = JSON.parse(readFileSync(at('head.json'), 'utf8'));
    const before = JSON.parse(readFileSync(join(root, 'models/kestrel-both.json'), 'utf8'));
    expect(head.sites.probes).toEqual(before.sites.probes);
    expect(head.fasteners.map(({ height }: { height: number }) => height)[0]).toBeGreaterThan(0);
    expect(JSON.parse(readFileSync(at('verdict.json'), 'utf8')).outcome).toBe('pass');
  });
});

describe('flathead import', () => {
  it('prints what was read and left out, and changes nothing', async () => {
    const { code, out } = await runHere(['import', 'probes', '-'], { input: 'x;y\n0;0\n0,5;abc\n1;0\n' });
    expect(code).toBe(0);
    expect(out).toMatch(/Read 2 probes, 1 sites, 1 dropped/);
    expect(out).toMatch(/Left out: 1\n {2}line 3: y is "abc"/);
    expect(out).toMatch(/Nothing is changed/);
  });

  it('writes a head that cannot be solved yet, and says why', async () => {
    writeFileSync(
      at('small.svg'),
      '<svg width="30mm" height="30mm" viewBox="0 0 30 30"><rect width="30" height="30"/></svg>',
    );
    const kestrel = join(root, 'models/kestrel-both.json');
    const { code, out } = await runHere([
      'import',
      'outline',
      at('small.svg'),
      '--into',
      kestrel,
      '--write',
      at('odd.json'),
      '--json',
    ]);
    expect(code).toBe(0);
    const { flaw, written, preview } = JSON.parse(out);
    expect(flaw).toMatchObject({ message: expect.stringMatching(/body|site|frame/i) });
    expect(written).toBe(at('odd.json'));
    expect(preview.counts).toMatchObject({ rectangles: 1 });
  });

  it.each([
    [['import', 'probes', '-', '--write', 'x.json'], 'USAGE', /add --into HEAD/],
    [['import', 'probes', '-', '--as', 'outline'], 'USAGE', /probes cannot be taken as "outline"/],
    [['import', 'outline', '-'], 'UNREADABLE', /no DXF, or lines are missing|no entities/],
    [['export', 'fields', '-', '--write', 'x.png'], 'USAGE', /End the file in \.csv or \.vtu/],
    [['import', 'heights', '-', '--gap', 'wide'], 'USAGE', /Give it in mm/],
  ])('refuses %j', async (args, code, message) => {
    const ended = await runHere([...args, '--json'], { input: 'x,y\n1,2\n' });
    expect(ended.code).toBe(2);
    expect(JSON.parse(ended.out)).toMatchObject({ code, message: expect.stringMatching(message) });
  });
});
