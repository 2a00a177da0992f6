import { readdir, readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { runHere } from './run-here.ts';

const models = new URL('../../../models/', import.meta.url);

describe('flathead schema', () => {
  it.each(['head-model', 'plate-problem', 'verdict'])('prints what models/schema/ holds for %s', async (kind) => {
    const committed = await readFile(new URL(`schema/${kind}.schema.json`, models), 'utf8');
    const { code, out } = await runHere(['schema', kind]);
    expect(code).toBe(0);
    // If this fails, run `npm run build:schema` and commit what it writes.
    expect(out).toBe(committed);
  });

  it('has a file for every schema and no other', async () => {
    const files = await readdir(fileURLToPath(new URL('schema/', models)));
    expect(files.sort()).toEqual(['head-model.schema.json', 'plate-problem.schema.json', 'verdict.schema.json']);
  });
});

describe('flathead materials and screws', () => {
  it('list presets with basis and source', async () => {
    const { code, out } = await runHere(['materials']);
    expect(code).toBe(0);
    expect(out).toMatch(/^ {2}alumina-96 +320 +0\.220 +3\.75 +6\.50 +300 {2}memory +typical of data sheets/m);
    expect((await runHere(['screws'])).out).toMatch(/^ {2}M2\.5 +3\.39 +4\.50 +4\.18 +2\.90 {2}stress area ISO 898-1/m);
  });

  it('print them as JSON', async () => {
    expect(JSON.parse((await runHere(['materials', '--json'])).out)['alumina-96']).toMatchObject({
      E: 320_000,
      nu: 0.22,
    });
    expect(JSON.parse((await runHere(['screws', '--json'])).out).M3).toMatchObject({ stressArea: 5.03 });
  });
});
