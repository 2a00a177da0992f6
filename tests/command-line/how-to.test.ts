import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { flathead, root } from './run.ts';

const folder = mkdtempSync(join(tmpdir(), 'flathead-how-to-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** Kestrel on a coarse mesh: what is tested is that the commands answer, not how well. */
const coarse = (name: string): string =>
  JSON.stringify({ ...JSON.parse(readFileSync(join(root, `models/${name}.json`), 'utf8')), mesh: { size: 6 } });
/** A connector row as a board drawing has it, on a layer of its own. */
const DRAWING = [
  ...[0, 'SECTION', 2, 'ENTITIES', 0, 'LWPOLYLINE', 8, 'CONNECTORS', 90, 4, 70, 1],
  ...[10, -20, 20, 28, 10, 20, 20, 28, 10, 20, 20, 34, 10, -20, 20, 34],
  ...[0, 'TEXT', 8, 'CONNECTORS', 10, 0, 20, 31, 40, 1, 1, 'connector row', 0, 'ENDSEC', 0, 'EOF'],
].join('\n');

/** Commands of the page in order: words, without their quotes. */
const commands = [...readFileSync(join(root, 'docs/how-to.md'), 'utf8').matchAll(/^```sh\n(.*?)^```/gms)].flatMap(
  ([, body]) =>
    body
      .trimEnd()
      .split('\n')
      .map((line) => [...line.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, bare]) => quoted ?? bare)),
);

/** What makes a command quick, by its beginning, and what its answer reads like. */
const ANSWERS: readonly (readonly [start: string, quick: readonly string[], answer: RegExp])[] = [
  ['new', [], /^$/],
  ['check HEAD --advise', [], /Advice: -\d+(\.\d+)? um of the \d+\.\d um needed: /],
  ['check', [], /^PASS {2}Site A3 bows 3\d\.\d um in case "mounted", .* inside the 35\.0 um limit\.$/m],
  [
    'sweep HEAD --vary fasteners',
    ['--workers', '1'],
    /^ {2}fasteners\[0\]\.at\[0\] +bow, um[\s\S]*-50[\s\S]*-45[\s\S]*-40/m,
  ],
  ['sweep HEAD --vary frame.ribs', ['--workers', '1'], /^ {2}1\.5 .*\n {2}2 .*\n {2}2\.5 /m],
  ['sweep HEAD --vary body.thickness', ['--workers', '1'], /just passes 35\.0 um with body\.thickness = 4\.\d+/],
  [
    'place HEAD --through either',
    ['--step', '8'],
    /6 fasteners placed[\s\S]*^PASS[\s\S]* go through the body, with \d/m,
  ],
  ['place HEAD --count 8', ['--step', '8'], /8 fasteners placed[\s\S]*^PASS/m],
  [
    'place HEAD --curve count',
    ['--step', '8', '--count', '4'],
    /^ {2}fasteners +bow, um[\s\S]*^ {2}4 +\d[\s\S]*^ {2}6 +\d/m,
  ],
  ['place HEAD --curve clearance', ['--step', '8', '--count', '4'], /^ {2}clearance, mm +bow, um[\s\S]*^ {2}0 /m],
  ['tolerance', ['--samples', '8', '--workers', '1'], /Cpu[\s\S]*what matters[\s\S]*body\.thickness/],
  ['budget', [], /^ {2}tip length +20\.0 +independent[\s\S]*^PASS {2}total/m],
  ['sites', [], /^ {2}8 x 1 +3, 0[\s\S]*^ {2}8 x 1 +1, 0/m],
  ['verify', ['--only', 'flatness'], /^(\d+) of \1 cases within their tolerance$/m],
  ['export fasteners', [], /^$/],
  ['import probes', [], /Read 8 probes, 2 sites[\s\S]*Nothing is changed; add --write FILE/],
  ['import outline', [], /Read 1 rectangles, 1 labels[\s\S]*Written to/],
];

describe('docs/how-to.md', () => {
  it('shows commands that answer its questions', { timeout: 240_000 }, async () => {
    const file = (name: string) => join(folder, name);
    writeFileSync(file('HEAD'), coarse('kestrel-both'));
    writeFileSync(file('FAILING'), coarse('kestrel-baseline'));
    writeFileSync(file('board.dxf'), DRAWING);
    writeFileSync(file('probes.csv'), 'x (mm),y (mm)\n-9,0\n-9,1\n-8,0\n-8,1\n8,0\n8,1\n9,0\n9,1\n');
    const used = new Set<string>();
    expect(commands.length).toBeGreaterThanOrEqual(14);
    for (const [program, ...words] of commands) {
      expect(program).toBe('flathead');
      const line = words.join(' ');
      const found = ANSWERS.find(([start]) => line.startsWith(start));
      expect(found, `no answer is known to: flathead ${line}`).toBeDefined();
      const [start, quick, answer] = found!;
      used.add(start);
      // Advice is for heads that fail.
      const own = words.includes('--advise') ? words.map((word) => (word === 'HEAD' ? 'FAILING' : word)) : words;
      const placed = own.map((word) => (/^(HEAD|FAILING|[a-z-]+\.(json|csv|dxf))$/.test(word) ? file(word) : word));
      const { code, out, err } = await flathead([...placed, ...quick]);
      expect([0, 1], `flathead ${line}: ${err}`).toContain(code);
      expect(out, `flathead ${line}`).toMatch(answer);
      const at = placed.indexOf('--write');
      if (at >= 0) expect(existsSync(placed[at + 1]), line).toBe(true);
    }
    expect(ANSWERS.map(([start]) => start).filter((start) => !used.has(start))).toEqual([]);
    const [keepOut] = JSON.parse(readFileSync(file('head.json'), 'utf8')).keepOuts;
    expect(keepOut).toMatchObject({ name: 'connector row', shape: { rectangle: [40, 6], centre: [0, 31] } });
  });
});
