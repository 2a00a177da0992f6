import { parseXml, type XmlElement } from '@rgrove/parse-xml';
import { strFromU8, unzipSync } from 'fflate';
import { Fault } from '../fault/fault.ts';
import { didYouMean } from '../plate/near-names.ts';
import { LONGEST_TEXT } from '../plate/read-json.ts';
import type { FileContent } from './file-text.ts';
import { type SheetRow, sheetRows, stringOf } from './sheet-rows.ts';
import { elementsOf } from './xml-elements.ts';

/** One sheet of a workbook as rows of cells. */
export interface Sheet {
  readonly rows: readonly SheetRow[];
  readonly guesses: readonly string[];
}

/** Whether a file is packed as workbooks are. */
export function isPacked(content: FileContent): content is Uint8Array {
  return typeof content !== 'string' && [0x50, 0x4b, 0x03, 0x04].every((byte, i) => content[i] === byte);
}

/**
 * A sheet of an Office Open XML workbook (ECMA-376, SpreadsheetML): numbers to the 15 digits that such programs show,
 * texts, and the results of formulas as they were saved.
 *
 * @param asked name of the sheet; the first that is shown if left out
 * @throws Fault UNREADABLE, USAGE or TOO_LARGE
 */
export function readSheet(bytes: Uint8Array, asked: string | undefined, what: string): Sheet {
  const parts = unpacked(bytes, what);
  const part = (path: string): XmlElement | null => {
    const held = parts[path];
    if (held === undefined) return null;
    try {
      return parseXml(strFromU8(held)).root;
    } catch {
      throw new Fault('UNREADABLE', `The part ${path} of the ${what} is no sound XML. Save the workbook again.`);
    }
  };
  const book = part('xl/workbook.xml');
  if (book === null)
    throw new Fault('UNREADABLE', `The ${what} is packed but no workbook. Save it as .xlsx, CSV, DXF or SVG.`);
  const targets = new Map(
    elementsOf(part('xl/_rels/workbook.xml.rels'), 'Relationship').map(({ attributes: { Id, Target = '' } }) => [
      Id,
      Target.startsWith('/') ? Target.slice(1) : `xl/${Target}`,
    ]),
  );
  const sheets = elementsOf(book, 'sheet').map(({ attributes }) => ({
    name: attributes.name ?? '',
    isShown: (attributes.state ?? 'visible') === 'visible',
    path: targets.get(attributes[Object.keys(attributes).find((key) => key.endsWith(':id')) ?? 'id']),
  }));
  const names = sheets.map(({ name }) => name);
  const sheet =
    asked === undefined
      ? (sheets.find(({ isShown }) => isShown) ?? sheets[0])
      : sheets.find(({ name }) => name.toLowerCase() === asked.toLowerCase());
  if (asked !== undefined && sheet === undefined)
    throw new Fault(
      'USAGE',
      `The ${what} has no sheet "${asked}".${didYouMean(asked, names)} Its sheets are ${quoted(names)}.`,
      '',
      { value: asked, expected: names },
    );
  const root = sheet?.path === undefined ? null : part(sheet.path);
  if (sheet === undefined || root === null)
    throw new Fault('UNREADABLE', `The ${what} holds no sheet of cells. Save it as CSV.`);
  const strings = elementsOf(part('xl/sharedStrings.xml'), 'si').map(stringOf);
  const { rows, hidden, wide } = sheetRows(root, strings, dateStyles(part('xl/styles.xml')));
  const others = names.filter((name) => name !== sheet.name);
  return {
    rows,
    guesses: [
      `Read the sheet "${sheet.name}".${others.length === 0 ? '' : ` Not read: ${quoted(others)}.`}`,
      ...(hidden === 0 ? [] : [`${hidden} hidden rows are read as well.`]),
      ...(wide === 0 ? [] : [`${wide} cells beyond column IV are not read.`]),
    ],
  };
}

function quoted(names: readonly string[]): string {
  return names
    .map((name) => `"${name}"`)
    .join(', ')
    .slice(0, 200);
}

/** Parts of the package that cells come from. */
function unpacked(bytes: Uint8Array, what: string): Record<string, Uint8Array> {
  let size = 0;
  try {
    return unzipSync(bytes, {
      filter({ name, originalSize }) {
        if (
          !/^xl\/(workbook\.xml|_rels\/workbook\.xml\.rels|sharedStrings\.xml|styles\.xml|worksheets\/[^/]+\.xml)$/.test(
            name,
          )
        )
          return false;
        size += originalSize;
        if (size > LONGEST_TEXT)
          throw new Fault(
            'TOO_LARGE',
            `The ${what} unpacks to more than ${LONGEST_TEXT / 1e6} MB. Save its sheet as CSV, and split it.`,
          );
        return true;
      },
    });
  } catch (thrown) {
    if (thrown instanceof Fault) throw thrown;
    throw new Fault('UNREADABLE', `The ${what} is a damaged workbook: it can't be unpacked. Save it again, or as CSV.`);
  }
}

/** Which cell styles show a number as a date or a time (ECMA-376, 18.8.30). */
function dateStyles(styles: XmlElement | null): boolean[] {
  const own = new Map(
    elementsOf(styles, 'numFmt').map(({ attributes }) => [attributes.numFmtId, attributes.formatCode]),
  );
  return elementsOf(elementsOf(styles, 'cellXfs')[0] ?? null, 'xf').map(({ attributes: { numFmtId = '0' } }) => {
    const code = own.get(numFmtId);
    const id = Number(numFmtId);
    if (code === undefined) return (id >= 14 && id <= 22) || (id >= 45 && id <= 47);
    return /[dmyhs]/i.test(code.replace(/"[^"]*"|\\.|\[[^\]]*\]|_./g, ''));
  });
}
