import { strToU8, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import writeXlsxFile from 'write-excel-file/universal';
import { readDrawing } from '../../src/exchange/outline.ts';
import { readProbeList } from '../../src/exchange/probe-list.ts';
import { readFile } from '../../src/exchange/read-file.ts';
import { sheetNames } from '../../src/exchange/workbook.ts';
import { faultOf } from '../model/fault-of.ts';
import { twoByTwo } from '../model/two-by-two.ts';
import { circle, dxf } from './dxf-texts.ts';

/** A workbook as an independent library writes it. */
async function written(sheets: Readonly<Record<string, readonly (readonly (string | number | null)[])[]>>) {
  const blob = await writeXlsxFile(
    Object.entries(sheets).map(([sheet, rows]) => ({
      sheet,
      data: rows.map((row) => row.map((value) => (value === null ? null : { value }))),
    })),
  ).toBlob();
  return new Uint8Array(await blob.arrayBuffer());
}

/** A workbook of parts made by hand; names of elements with a prefix, as some programs write them. */
function packed(rows: string, { sheets = '<sheet name="Probes" r:id="R1"/>', styles = '' } = {}): Uint8Array {
  const files: Record<string, string> = {
    'xl/workbook.xml': `<workbook xmlns:r="r"><sheets>${sheets}</sheets></workbook>`,
    'xl/_rels/workbook.xml.rels':
      '<Relationships><Relationship Id="R1" Target="worksheets/sheet1.xml"/><Relationship Id="R2" Target="/xl/worksheets/sheet2.xml"/></Relationships>',
    'xl/sharedStrings.xml':
      '<x:sst xmlns:x="x"><x:si><x:r><x:t>x (</x:t></x:r><x:r><x:t>um)</x:t></x:r></x:si></x:sst>',
    'xl/styles.xml': styles === '' ? '<styleSheet/>' : styles,
    'xl/worksheets/sheet1.xml': `<x:worksheet xmlns:x="x"><x:sheetData>${rows}</x:sheetData></x:worksheet>`,
    'xl/worksheets/sheet2.xml':
      '<worksheet><sheetData><row><c t="inlineStr"><is><t>x</t></is></c><c t="inlineStr"><is><t>y</t></is></c></row><row><c><v>7</v></c><c><v>8</v></c></row></sheetData></worksheet>',
  };
  return zipSync(Object.fromEntries(Object.entries(files).map(([name, text]) => [name, strToU8(text)])));
}
const HEADER =
  '<x:row r="3"><x:c r="A3" t="inlineStr"><x:is><x:t>y, um</x:t></x:is></x:c><x:c r="C3" t="s"><x:v>0</x:v></x:c></x:row>';
const row = (line: number, cells: string, more = '') => `<x:row r="${line}"${more}>${cells}</x:row>`;
const cell = (at: string, value: string, more = '') => `<x:c r="${at}"${more}><x:v>${value}</x:v></x:c>`;

describe('a probe list in a workbook', () => {
  it('is read from the first sheet, cells past empty ones in their columns, whatever the case of its kind', async () => {
    const bytes = await written({
      Probes: [
        ['Probes of a made-up head', null, null, null],
        ['Site', 'X [mm]', null, 'Y [mm]', 'F [cN]', 'remark'],
        ['A', 0.1 + 0.2, null, 2, 3, 'x'],
        ['A', 1.3, null, '2,5', '3,5', null],
        ['A', 'n/a', null, 2, 3, null],
      ],
      Notes: [['nothing']],
    });
    const { read, preview } = readProbeList(bytes);
    expect(read.sites[0].probes.map(([x, y, force]) => [x, y, force])).toEqual([
      [0.5, 0.25, expect.closeTo(0.035, 12)],
      [-0.5, -0.25, expect.closeTo(0.03, 12)],
    ]);
    expect(preview.guesses[0]).toBe('Read the sheet "Probes". Not read: "Notes".');
    expect(preview.dropped).toEqual([
      { line: 1, reason: expect.stringContaining('before the header') },
      { line: 5, reason: 'x is "n/a", which is no number' },
    ]);
    const { model } = readFile('probes', bytes, { as: 'field' }).take(twoByTwo);
    expect(model.sites.probes).toMatchObject({ count: 2, preload: 0.0325 });
  });

  it('is read from the sheet asked for', () => {
    const two = packed(HEADER, { sheets: '<sheet name="Old" state="hidden" r:id="R1"/><sheet name="New" r:id="R2"/>' });
    expect(sheetNames(two)).toEqual([
      { name: 'Old', isShown: false },
      { name: 'New', isShown: true },
    ]);
    expect(readProbeList(two).preview.extents).toEqual({ min: [7, 8], max: [7, 8] });
    expect(faultOf(() => readProbeList(two, { sheet: 'Nwe' }))).toMatchObject({
      code: 'USAGE',
      message: expect.stringMatching(/no sheet "Nwe".*"New".*Its sheets are "Old", "New"/),
    });
    expect(faultOf(() => readProbeList(two, { sheet: 'old' })).message).toMatch(/no probe that can be read/);
  });

  it('leaves out what no number was typed in for, by row, and names rows that are hidden', () => {
    const styles =
      '<styleSheet><numFmts><numFmt numFmtId="170" formatCode="dd\\.mmm"/><numFmt numFmtId="171" formatCode="0.00&quot; mm&quot;"/></numFmts><cellXfs><xf/><xf numFmtId="170"/><xf numFmtId="16"/><xf numFmtId="171"/></cellXfs></styleSheet>';
    const rows = [
      HEADER,
      row(4, cell('A4', '1000') + cell('C4', '2000.0000000000002', ' s="3"')),
      row(5, cell('A5', '1000') + cell('C5', '44562', ' s="1"')),
      row(6, cell('A6', '44562', ' s="2"') + cell('C6', '1')),
      row(7, cell('A7', '#DIV/0!', ' t="e"') + cell('C7', '1')),
      row(8, `${cell('A8', '1')}<x:c r="C8"><x:f>A8*2</x:f></x:c>`),
      row(9, cell('A9', '1', ' t="b"') + cell('C9', '1')),
      row(10, cell('A10', '1000') + cell('C10', '3000'), ' hidden="1"'),
      row(12, cell('A12', '1000') + cell('C12', '4000', ' t="str"') + cell('ZZ12', '1')),
    ];
    const { read, preview } = readProbeList(packed(rows.join(''), { styles }));
    expect(preview.extents).toEqual({ min: [2, 1], max: [4, 1] });
    expect(read.sites[0].probes).toHaveLength(3);
    expect(preview.dropped.map(({ line, reason }) => [line, reason])).toEqual([
      [5, 'x is "date 44562", which is no number'],
      [6, 'y is "date 44562", which is no number'],
      [7, 'y is "error #DIV/0!", which is no number'],
      [8, 'x is "formula without a result", which is no number'],
      [9, 'y is "TRUE", which is no number'],
    ]);
    const said = preview.guesses.join(' ');
    expect(said).toMatch(/1 hidden rows are read as well/);
    expect(said).toMatch(/1 cells beyond column IV are not read/);
  });

  it.each([
    ['an empty sheet', packed(''), /sheet of the probe list is empty/],
    ['no workbook', zipSync({ 'a.txt': strToU8('x') }), /packed but no workbook/],
    ['a sheet that is nowhere', packed('', { sheets: '<sheet/>' }), /holds no sheet of cells/],
    ['a damaged package', packed(HEADER).subarray(0, 300), /damaged workbook/],
    ['a sheet that breaks off', packed('<x:row>'), /sheet1.xml of the probe list is no sound XML/],
    ['the older kind', Uint8Array.of(0xd0, 0xcf, 0x11, 0xe0, 0, 0), /older binary kind. Save it as .xlsx or CSV/],
    ['a PDF', strToU8('%PDF-1.7'), /is a PDF/],
  ])('is refused with %s', (_, bytes, message) => {
    expect(faultOf(() => readProbeList(bytes))).toMatchObject({
      code: 'UNREADABLE',
      message: expect.stringMatching(message),
    });
  });

  it('has sheets by name, and no other file has', () => {
    expect(sheetNames('x,y\n0,0\n')).toEqual([]);
    expect(sheetNames(strToU8('x,y\n0,0\n'))).toEqual([]);
    for (const bytes of [packed(HEADER).subarray(0, 300), zipSync({ 'a.txt': strToU8('x') })])
      expect(faultOf(() => sheetNames(bytes)).code).toBe('UNREADABLE');
  });

  it('of 20,000 rows is read in under 5 s', async () => {
    const rows = Array.from({ length: 20_000 }, (_, i) => [i, (i % 200) * 0.3, Math.floor(i / 200) * 0.3, 0.05]);
    const bytes = await written({ All: [['No', 'x (mm)', 'y (mm)', 'F (N)'], ...rows] });
    const started = performance.now();
    expect(readProbeList(bytes).preview.counts).toMatchObject({ probes: 20_000, sites: 1 });
    expect(performance.now() - started).toBeLessThan(5000);
  });
});

describe('letters of a file', () => {
  const latin = (text: string) => Uint8Array.from(text, (letter) => letter.charCodeAt(0));

  it('are UTF-8, UTF-16 with a mark, or Windows-1252, which is said', () => {
    const list = 'x (\u00b5m);y (\u00b5m)\n1000;2000\n2000;2000\n';
    const wide = (bigEndian: boolean) =>
      Uint8Array.from(
        [0xfeff, ...Array.from(list, (letter) => letter.charCodeAt(0))].flatMap((code) =>
          bigEndian ? [code >> 8, code & 255] : [code & 255, code >> 8],
        ),
      );
    for (const bytes of [strToU8(list), wide(true), wide(false), latin(list)]) {
      const { preview } = readProbeList(bytes);
      expect(preview.extents).toEqual({ min: [1, 2], max: [2, 2] });
      expect(preview.guesses.some((guess) => /Windows-1252/.test(guess))).toBe(bytes[3] === 0xb5);
    }
  });

  it('of a drawing likewise', () => {
    const text = dxf([...circle(0, 0, 5), 0, 'TEXT', 8, 'L', 10, 0, 20, 0, 1, '\u00dcberstand'], { units: 4 });
    const { read, preview } = readDrawing(latin(text));
    expect(read.labels[0].text).toBe('\u00dcberstand');
    expect(preview.guesses.join()).toMatch(/Windows-1252/);
  });
});

describe('a kind of file', () => {
  it('is taken in one of its ways only', () => {
    expect(faultOf(() => readFile('heights', 'x,y,z\n', { as: 'points' })).message).toMatch(/Leave it out/);
    expect(faultOf(() => readFile('outline', '', { as: 'keepouts' })).message).toMatch(/Did you mean "keep-outs"/);
  });
});
