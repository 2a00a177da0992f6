import { mkdtemp, readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { HeadModel } from '@flathead/solver';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { flathead } from '../command-line/run.ts';
import { visitEach } from './visit.ts';
import { hasBrowser, savedModel, settled } from './workbench.ts';

/** A connector of 40 x 6 mm with its name in it, as a board drawing has it: DXF R12. */
const CONNECTOR = [
  [0, 'SECTION', 2, 'HEADER', 9, '$INSUNITS', 70, 4, 0, 'ENDSEC', 0, 'SECTION', 2, 'ENTITIES'],
  ...[
    [-20, 22, 20, 22],
    [20, 22, 20, 28],
    [20, 28, -20, 28],
    [-20, 28, -20, 22],
  ].map(([x0, y0, x1, y1]) => [0, 'LINE', 8, 'CONNECTORS', 10, x0, 20, y0, 11, x1, 21, y1]),
  [0, 'TEXT', 8, 'CONNECTORS', 10, 0, 20, 25, 40, 1, 1, 'J7'],
  [0, 'CIRCLE', 8, 'LOGO', 10, 60, 20, 0, 40, 3],
  [0, 'ENDSEC', 0, 'EOF'],
]
  .flat()
  .join('\n');

async function choose(page: Page, name: string, text: string): Promise<void> {
  await page.getByTestId('files').click();
  await page.getByTestId('files-import').click();
  const file = { name, mimeType: 'text/plain', buffer: Buffer.from(text) };
  await page.getByTestId('import-file').setInputFiles(file);
}

async function exported(page: Page, id: string): Promise<Buffer> {
  const [download] = await Promise.all([page.waitForEvent('download'), page.getByTestId(`export-${id}`).click()]);
  return readFile(await download.path());
}

async function onCommandLine(what: string, ending: string, model: HeadModel): Promise<string> {
  const file = join(await mkdtemp(join(tmpdir(), 'flathead-export-')), `it${ending}`);
  const { code, err } = await flathead(['export', what, '-', '--write', file], JSON.stringify(model));
  expect(code, err).toBe(0);
  return readFile(file, 'utf8');
}

describe.skipIf(!hasBrowser)('files of other programs', () => {
  const visit = visitEach();

  it('takes a keep-out of one layer of a drawing, in one step of undo', async () => {
    const { page } = visit.bench;
    await settled(page);
    const before = await savedModel(page);
    await choose(page, 'board.dxf', CONNECTOR);
    await page.getByTestId('import-as').selectOption('keep-outs');
    await page.getByTestId('layer-CONNECTORS').check();
    await page.getByTestId('import-preview').getByText('as the file says').waitFor();
    await page.getByTestId('import-take').click();
    await page.getByText('board.dxf is in the head').waitFor();
    const { keepOuts } = await savedModel(page);
    expect(keepOuts).toEqual([{ name: 'J7', shape: { rectangle: [40, 6], centre: [0, 25] } }]);
    await page.getByTestId('undo').click();
    expect((await savedModel(page)).keepOuts).toEqual(before.keepOuts);
  });

  it('names the line of a probe list that it leaves out, and why a file is no list', async () => {
    const { page } = visit.bench;
    await settled(page);
    const rows = Array.from(
      { length: 100 },
      (_, i) => `${(i % 10) * 0.4 - 1.8},${Math.floor(i / 10) * 0.4 - 1.8},0.08`,
    );
    await choose(page, 'probes.csv', ['x,y,force', ...rows, '0,oops,0.08'].join('\n'));
    const dropped = page.getByTestId('import-dropped').locator('li');
    expect(await dropped.allTextContents()).toEqual(['Line 102: y is "oops", which is no number']);
    expect(await page.getByTestId('import-preview').textContent()).toContain('100 probes');
    await page.getByTestId('import-units').selectOption('mil');
    await page.getByTestId('import-preview').getByText('mil, as chosen').waitFor();
    await page.getByTestId('import-units').selectOption('');
    await page.getByTestId('import-take').click();
    const { sites } = await savedModel(page);
    expect([sites.columns, sites.rows, sites.probes.count, sites.probes.preload]).toEqual([1, 1, 100, 0.08]);

    await choose(page, 'letter.csv', 'Dear reader');
    await page.getByTestId('import-fault').waitFor();
    expect(await page.getByTestId('import-take').isDisabled()).toBe(true);
    await page.keyboard.press('Escape');
  });

  it('writes what the command line writes, and files that are what they say', async () => {
    const { page } = visit.bench;
    await settled(page);
    const model = await savedModel(page);
    await page.getByTestId('files').click();
    await page.getByTestId('files-export').click();
    expect((await exported(page, 'fasteners')).toString()).toBe(await onCommandLine('fasteners', '.csv', model));
    expect((await exported(page, 'outline')).toString()).toBe(await onCommandLine('outline', '.dxf', model));
    const here = JSON.parse((await exported(page, 'verdict')).toString());
    const there = JSON.parse(await onCommandLine('verdict', '.json', model));
    expect(here.sentence).toBe(there.sentence);
    expect([here.model, here.criteria.length]).toEqual([there.model, there.criteria.length]);
    for (const [id, begins] of [
      ['pixels', '\x89PNG'],
      ['tables', 'PK'],
      ['glb', 'glTF'],
      ['picture', '<'],
      ['mesh', '<'],
      ['fields', '# flathead'],
    ])
      expect((await exported(page, id)).toString('latin1'), id).toSatisfy((text: string) => text.startsWith(begins));
    const stl = await exported(page, 'stl');
    expect(stl.length).toBe(84 + 50 * stl.readUInt32LE(80));
    await page.keyboard.press('Escape');
  });
});
