import type { XmlElement } from '@rgrove/parse-xml';
import { Fault } from '../fault/fault.ts';
import { didYouMean } from '../plate/near-names.ts';
import type { FileContent } from './file-text.ts';
import { isPacked, type PackageParts, partsOf } from './package-parts.ts';
import { type SheetRow, sheetRows, stringOf } from './sheet-rows.ts';
import { elementsOf } from './xml-elements.ts';

/** One sheet of a workbook as rows of cells. */
export interface Sheet {
  readonly rows: readonly SheetRow[];
  readonly guesses: readonly string[];
}

/** A sheet by its name; others of a workbook may be kept from view. */
export interface SheetName {
  readonly name: string;
  readonly isShown: boolean;
}

interface SheetPart extends SheetName {
  /** Of its cells, within the package. */
  readonly path: string | undefined;
}

const BOOK = 'xl/workbook.xml';
const LINKS = 'xl/_rels/workbook.xml.rels';

/**
 * Sheets of a workbook, in its order; none where the file is no workbook.
 *
 * @throws Fault UNREADABLE or TOO_LARGE for a damaged workbook
 */
export function sheetNames(content: FileContent): readonly SheetName[] {
  if (!isPacked(content)) return [];
  const part = partsOf(content, 'file', (path) => path === BOOK || path === LINKS);
  return sheetParts(part, 'file').map(({ name, isShown }) => ({ name, isShown }));
}

/**
 * A sheet of an Office Open XML workbook (ECMA-376, SpreadsheetML): numbers to the 15 digits that such programs show,
 * texts, and the results of formulas as they were saved.
 *
 * @param asked name of the sheet; the first that is shown if left out
 * @throws Fault UNREADABLE, USAGE or TOO_LARGE
 */
export function readSheet(bytes: Uint8Array, asked: string | undefined, what: string): Sheet {
  const part = partsOf(bytes, what, (path) =>
    /^xl\/(workbook\.xml|_rels\/workbook\.xml\.rels|sharedStrings\.xml|styles\.xml|worksheets\/[^/]+\.xml)$/.test(path),
  );
  const sheets = sheetParts(part, what);
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

/** @throws Fault UNREADABLE when the package is no workbook */
function sheetParts(part: PackageParts, what: string): readonly SheetPart[] {
  const book = part(BOOK);
  if (book === null)
    throw new Fault('UNREADABLE', `The ${what} is packed but no workbook. Save it as .xlsx, CSV, DXF or SVG.`);
  const targets = new Map(
    elementsOf(part(LINKS), 'Relationship').map(({ attributes: { Id, Target = '' } }) => [
      Id,
      Target.startsWith('/') ? Target.slice(1) : `xl/${Target}`,
    ]),
  );
  return elementsOf(book, 'sheet').map(({ attributes }) => ({
    name: attributes.name ?? '',
    isShown: (attributes.state ?? 'visible') === 'visible',
    path: targets.get(attributes[Object.keys(attributes).find((key) => key.endsWith(':id')) ?? 'id']),
  }));
}

function quoted(names: readonly string[]): string {
  return names
    .map((name) => `"${name}"`)
    .join(', ')
    .slice(0, 200);
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
