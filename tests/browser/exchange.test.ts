import { mkdtemp, readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { read, utils, write } from '@e965/xlsx';
import type { HeadModel } from '@flathead/solver';
import { WebIO } from '@gltf-transform/core';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { canReadMeshes, readMesh } from '../../packages/solver/test/exchange/read-mesh.ts';
import { flathead } from '../command-line/run.ts';
import { UNDRAWN, visitEach } from './visit.ts';
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

async function choose(page: Page, name: string, content: string | Uint8Array): Promise<void> {
  await page.getByTestId('files').click();
  await page.getByTestId('files-import').click();
  const file = { name, mimeType: 'text/plain', buffer: Buffer.from(content) };
  await page.getByTestId('import-file').setInputFiles(file);
}

async function exported(page: Page, id: string): Promise<Buffer> {
  const [download] = await Promise.all([page.waitForEvent('download'), page.getByTestId(`export-${id}`).click()]);
  return readFile(await download.path());
}

/** A picture as the browser draws it: its width, pixels, and how many colours cover a thousandth of it or more. */
function seen(page: Page, file: Buffer, type: string): Promise<{ width: number; colours: number }> {
  return page.evaluate(
    async ([base64, kind]) => {
      const image = new Image();
      image.src = `data:${kind};base64,${base64}`;
      await image.decode();
      const canvas = Object.assign(document.createElement('canvas'), { width: 500, height: 400 });
      const context = canvas.getContext('2d')!;
      context.drawImage(image, 0, 0, 500, 400);
      const pixels = new Uint32Array(context.getImageData(0, 0, 500, 400).data.buffer);
      const count = new Map<number, number>();
      for (const pixel of pixels) count.set(pixel, (count.get(pixel) ?? 0) + 1);
      return { width: image.naturalWidth, colours: [...count.values()].filter((n) => n >= 200).length };
    },
    [file.toString('base64'), type],
  );
}

async function onCommandLine(what: string, ending: string, model: HeadModel): Promise<string> {
  const file = join(await mkdtemp(join(tmpdir(), 'flathead-export-')), `it${ending}`);
  const { code, err } = await flathead(['export', what, '-', '--write', file], JSON.stringify(model));
  expect(code, err).toBe(0);
  return readFile(file, 'utf8');
}

describe.skipIf(!hasBrowser)('files of other programs', () => {
  const visit = visitEach(UNDRAWN);

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
    // Told otherwise, the forces are others, live; told nothing, they are as before.
    const preview = page.getByTestId('import').getByLabel('What was read');
    await page.getByTestId('import-column-force').selectOption('force');
    await page.getByTestId('import-forceUnits').selectOption('gf');
    await preview.getByText('"force" as force').waitFor();
    await page.getByTestId('import-gap').fill('0,2');
    await page.getByTestId('import-preview').getByText('100 sites').waitFor();
    await page.getByTestId('import-gap').fill('');
    await page.getByTestId('import-column-force').selectOption('');
    await page.getByTestId('import-forceUnits').selectOption('');
    await page.getByTestId('import-take').click();
    const { sites } = await savedModel(page);
    expect([sites.columns, sites.rows, sites.probes.count, sites.probes.preload]).toEqual([1, 1, 100, 0.08]);

    await choose(page, 'letter.csv', 'Dear reader');
    await page.getByTestId('import-fault').waitFor();
    expect(await page.getByTestId('import-take').isDisabled()).toBe(true);
    await page.keyboard.press('Escape');
  });

  it('reads the sheet of a workbook that is chosen', async () => {
    const { page } = visit.bench;
    await settled(page);
    const book = utils.book_new();
    const ring = Array.from({ length: 24 }, (_, i) => [2 * Math.cos(i / 4), 2 * Math.sin(i / 4), 0.06]);
    const sheets: Record<string, unknown[][]> = {
      Notes: [['Probes of the second build'], ['see the next sheet']],
      Probes: [['x (mm)', 'y (mm)', 'force (N)'], ...ring],
      Old: [['x (mm)', 'y (mm)', 'force (N)'], ...ring.slice(6)],
    };
    for (const [name, rows] of Object.entries(sheets)) utils.book_append_sheet(book, utils.aoa_to_sheet(rows), name);
    book.Workbook = { Sheets: [{}, {}, { Hidden: 1 }] };
    await choose(page, 'probes.xlsx', write(book, { type: 'buffer', bookType: 'xlsx' }));
    const sheet = page.getByTestId('import-sheet');
    await page.getByTestId('import-fault').waitFor();
    expect(await sheet.inputValue()).toBe('Notes');
    expect(await sheet.locator('option').allTextContents()).toEqual(['Notes', 'Probes', 'Old (hidden)']);
    const preview = page.getByTestId('import-preview');
    await sheet.selectOption('Old');
    await preview.getByText('18 probes').waitFor();
    await sheet.selectOption('Probes');
    await preview.getByText('24 probes').waitFor();
    await page.getByText('Not read: "Notes", "Old"').waitFor();
    await page.getByTestId('import-take').click();
    const { probes } = (await savedModel(page)).sites;
    expect([probes.count, probes.preload]).toEqual([24, 0.06]);

    const single = utils.book_new(utils.aoa_to_sheet(sheets.Old), 'Old');
    await choose(page, 'probes.xlsx', write(single, { type: 'buffer', bookType: 'xlsx' }));
    await preview.getByText('18 probes').waitFor();
    expect(await sheet.count()).toBe(0);
    await page.keyboard.press('Escape');
  });

  it('writes what the command line writes, and files that other programs open', async () => {
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
    const tables = read(await exported(page, 'tables'));
    expect(utils.sheet_to_json(tables.Sheets.Verdict, { header: 1 })).toContainEqual([there.sentence]);
    const fields = read((await exported(page, 'fields')).toString(), { type: 'string' });
    expect(utils.sheet_to_json(fields.Sheets.Sheet1, { header: 1 }).length).toBeGreaterThan(1000);
    const surface = (await new WebIO().readBinary(await exported(page, 'glb'))).getRoot().listMeshes()[0];
    const triangles = surface.listPrimitives()[0].getIndices()!.getCount() / 3;
    const [vtu, stl] = [await exported(page, 'mesh'), await exported(page, 'stl')];
    if (canReadMeshes)
      for (const mesh of [readMesh(vtu, '.vtu'), readMesh(stl, '.stl')])
        expect(mesh.cells.map(({ nodes }) => nodes.length)).toEqual([triangles]);
    const { outer } = model.frame!;
    const wide = 'rectangle' in outer ? outer.rectangle[0] + 8 : Number.NaN;
    for (const [id, type, width] of [
      ['pixels', 'image/png', 2000],
      // To scale at 96 pixels to the inch, with its margins of 4 mm.
      ['picture', 'image/svg+xml', (wide / 25.4) * 96],
    ] as const) {
      const picture = await seen(page, await exported(page, id), type);
      expect(Math.abs(picture.width - width), id).toBeLessThan(1);
      // Bands, hatch and the white around them.
      expect(picture.colours, id).toBeGreaterThan(8);
    }
    await page.keyboard.press('Escape');
  });
});
