import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { run } from '../src/program.ts';
import { stiff } from './heads.ts';
import { runHere } from './run-here.ts';

let folder = '';
let sweep: string[] = [];
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'interrupted-'));
  const head = join(folder, 'head.json');
  await writeFile(head, JSON.stringify(stiff));
  sweep = ['sweep', head, '--vary', 'body.thickness=4..5:6', '--workers', '1'];
});
afterAll(() => rm(folder, { recursive: true }));

/** Runs a command and has Ctrl-C pressed as soon as so many lines are out, or told on the way. */
async function interrupted(args: readonly string[], after: number) {
  let [out, err, pressed] = ['', '', false];
  const press = (lines: number): void => {
    if (pressed || lines < after) return;
    pressed = true;
    process.emit('SIGINT');
  };
  const before = process.listenerCount('SIGINT');
  const code = await run(args, {
    out: (text) => {
      out += text;
      press(out.split('\n').length - 1);
    },
    err: (text) => {
      err += text;
      press(err.split(/[\n\r]/).length - 1);
    },
    input: (async function* () {})(),
    colour: false,
    interactive: !args.includes('--json'),
  });
  expect(pressed).toBe(true);
  expect(process.listenerCount('SIGINT')).toBe(before);
  return { code, out, err };
}

const lines = (text: string): Record<string, unknown>[] => {
  // Whole lines only.
  expect(text.endsWith('\n')).toBe(true);
  return text
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line));
};

describe('a study that is cancelled half-way', () => {
  it('keeps the rows so far as whole lines, sums nothing up and says how to go on', async () => {
    // The header and two rows.
    const { code, out, err } = await interrupted([...sweep, '--json'], 3);
    expect(code).toBe(3);
    const [header, ...rows] = lines(out);
    expect(header).toMatchObject({ study: 'sweep', total: 6 });
    expect(rows.map(({ index }) => index)).toEqual([0, 1]);
    expect(err).toMatch(/^Stopped after 2 of 6 rows; these are kept\. .*--part/m);
    const whole = await runHere([...sweep, '--json']);
    expect(whole.out.startsWith(out)).toBe(true);
  });

  it('of which one part was cancelled is not merged short, and is the same once that part is run again', async () => {
    const file = (name: string) => join(folder, name);
    const part = (of: string) => [...sweep, '--json', '--part', of];
    const cut = await interrupted(part('2/2'), 2);
    expect(cut.code).toBe(3);
    expect(cut.err).toMatch(/^Stopped after 1 of 3 rows; these are kept\. Run part 2\/2 again before you merge\.$/m);
    await writeFile(file('one'), (await runHere(part('1/2'))).out);
    await writeFile(file('two'), cut.out);
    const short = await runHere(['merge', file('one'), file('two')]);
    expect(short.code).toBe(2);
    expect(short.err).toMatch(/2 of 6 rows are missing, the first of them 3, 5\./);
    await writeFile(file('two'), (await runHere(part('2/2'))).out);
    const merged = await runHere(['merge', file('one'), file('two')]);
    expect(merged.out).toBe((await runHere([...sweep, '--json'])).out);
  });

  it('tells in words what is there', async () => {
    const { code, out, err } = await interrupted(sweep, 2);
    expect(code).toBe(3);
    expect(err).toMatch(/Stopped after \d of 6 rows; these are kept\./);
    expect(out).toMatch(/bow/);
  });
});
