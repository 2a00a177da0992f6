import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { stiff } from './heads.ts';
import { runHere } from './run-here.ts';

let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'flathead-'));
});
afterAll(() => rm(folder, { recursive: true }));

const bad: readonly [string, string, string, string, RegExp][] = [
  ['an empty file', '', 'NOT_JSON', '', /The text is empty/],
  ['no JSON', 'G21 G90\n', 'NOT_JSON', '', /line 1, column 1 has "G21"/],
  ['an unknown key', JSON.stringify({ ...stiff, fastners: [] }), 'SCHEMA', 'fastners', /Did you mean "fasteners"/],
  [
    'an unknown material',
    JSON.stringify({ ...stiff, body: { ...stiff.body, material: 'alumina96' } }),
    'UNKNOWN_MATERIAL',
    'body.material',
    /Did you mean "alumina-96"/,
  ],
  [
    'a thickness of 1e300',
    JSON.stringify(stiff).replace('"thickness":4', '"thickness":1e300'),
    'OUT_OF_RANGE',
    'body.thickness',
    /expected 1000 or less/,
  ],
  [
    'two fasteners',
    JSON.stringify({ ...stiff, fasteners: stiff.fasteners.slice(1) }),
    'MECHANISM',
    'fasteners',
    /add a third fastener off that line/,
  ],
  ['a plate problem', '{"plate":1}', 'SCHEMA', 'plate', /flathead plate/],
];

describe('bad input', () => {
  it.each(bad)('%s ends with 2 and an object under --json', async (_, input, code, path, message) => {
    const ended = await runHere(['check', '-', '--json'], { input });
    expect(ended.code).toBe(2);
    expect(ended.err).toBe('');
    const report = JSON.parse(ended.out);
    expect(Object.keys(report)).toEqual(['code', 'message', 'path', 'details']);
    expect(report).toMatchObject({ code, path });
    expect(report.message).toMatch(message);
  });

  it.each(bad)('%s ends with 2 and words on stderr, without a stack', async (_, input, code, path, message) => {
    const ended = await runHere(['check', '-'], { input });
    expect(ended.code).toBe(2);
    expect(ended.out).toBe('');
    expect(ended.err).toMatch(message);
    expect(ended.err).toContain(path === '' ? code : `${code} at ${path}`);
    expect(ended.err).not.toMatch(/\bat .*\.ts:\d+|^\s+at /m);
  });

  it('lists further issues below the first', async () => {
    const { err } = await runHere(['check', '-'], { input: '{"flathead":1}' });
    expect(err).toMatch(/ {2}- name is missing.*\n {2}- body is missing/);
  });

  it('names a file that is not there', async () => {
    const { code, err } = await runHere(['check', join(folder, 'nowhere.json')]);
    expect(code).toBe(2);
    expect(err).toMatch(/nowhere\.json can't be read: there is no such file/);
    expect((await runHere(['check', folder])).err).toMatch(/it is a folder/);
  });

  it('stops reading a file of 50 MB', async () => {
    const file = join(folder, 'large.json');
    await writeFile(file, ' '.repeat(50_000_000));
    const { code, out } = await runHere(['check', file, '--json']);
    expect(code).toBe(2);
    expect(JSON.parse(out)).toMatchObject({ code: 'TOO_LARGE', details: { file } });
  });
});

describe('the command line', () => {
  it.each([
    [['chek', 'a.json'], /unknown command 'chek'/i],
    [['check'], /missing required argument 'file'/i],
    [['check', 'a.json', '--jso'], /unknown option '--jso'.*--json/is],
    [['schema', 'head'], /Allowed choices are head-model, plate-problem, verdict\. Try flathead --help\.$/m],
    [['chekc'], /^Unknown command 'chekc'\. Did you mean check\? Try flathead --help\.$/m],
  ])('ends with 2 on %j', async (args, message) => {
    const { code, err } = await runHere(args);
    expect(code).toBe(2);
    expect(err).toMatch(message);
    expect(err).toMatch(/USAGE/);
  });

  it('prints help on stdout when asked, on stderr when it must', async () => {
    const asked = await runHere(['--help']);
    expect(asked.code).toBe(0);
    expect(asked.out).toMatch(/Exit codes: 0 pass or marginal/);
    const must = await runHere([]);
    expect(must.code).toBe(2);
    expect(must.err).toMatch(/Usage: flathead/);
  });
});
