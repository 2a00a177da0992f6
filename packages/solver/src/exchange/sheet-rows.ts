import { XmlElement } from '@rgrove/parse-xml';
import { elementsOf, plainName } from './xml-elements.ts';

/** Columns that are read: up to IV. */
const MOST_COLUMNS = 256;

/** A row with its cells, numbers as such. */
export interface SheetRow {
  /** From 1. */
  readonly line: number;
  readonly cells: readonly (string | number)[];
}

export interface SheetRows {
  readonly rows: readonly SheetRow[];
  /** Rows that the workbook does not show. */
  readonly hidden: number;
  /** Cells beyond the columns that are read. */
  readonly wide: number;
}

/**
 * Cells of a sheet: texts, and numbers to the 15 digits that spreadsheets show.
 *
 * @param strings shared by all sheets
 * @param isDate by style: a number that is shown as a date was none when it was typed
 */
export function sheetRows(sheet: XmlElement, strings: readonly string[], isDate: readonly boolean[]): SheetRows {
  const rows: SheetRow[] = [];
  let [line, hidden, wide] = [0, 0, 0];
  for (const row of elementsOf(sheet, 'row')) {
    line = /^\d+$/.test(row.attributes.r ?? '') ? Number(row.attributes.r) : line + 1;
    const cells: (string | number)[] = [];
    for (const cell of elementsOf(row, 'c')) {
      const index = indexOf(cell.attributes.r) ?? cells.length;
      const value = cellValue(cell, strings, isDate);
      if (index >= MOST_COLUMNS) {
        if (value !== '') wide++;
        continue;
      }
      while (cells.length < index) cells.push('');
      cells[index] = value;
    }
    if (cells.every((cell) => cell === '')) continue;
    if (/^(1|true)$/.test(row.attributes.hidden ?? '')) hidden++;
    rows.push({ line, cells });
  }
  return { rows, hidden, wide };
}

/** Column of a reference such as `AB12`, from 0; `null` without one. */
function indexOf(reference: string | undefined): number | null {
  const letters = /^[A-Z]{1,3}/.exec(reference ?? '')?.[0];
  return letters === undefined ? null : [...letters].reduce((n, letter) => 26 * n + letter.charCodeAt(0) - 64, 0) - 1;
}

function cellValue(cell: XmlElement, strings: readonly string[], isDate: readonly boolean[]): string | number {
  const value = elementsOf(cell, 'v')[0]?.text ?? '';
  switch (cell.attributes.t ?? 'n') {
    case 's':
      return (strings[Number(value)] ?? '').trim();
    case 'inlineStr':
      return elementsOf(cell, 'is').map(stringOf).join('').trim();
    case 'b':
      return value === '1' ? 'TRUE' : 'FALSE';
    case 'e':
      return `error ${value}`;
    case 'n': {
      if (value === '') return elementsOf(cell, 'f').length > 0 ? 'formula without a result' : '';
      if (isDate[Number(cell.attributes.s ?? 0)]) return `date ${value}`;
      return Number(Number(value).toPrecision(15));
    }
    default:
      return value.trim();
  }
}

/** Text of a string item: its runs, without the readings of letters. */
export function stringOf(item: XmlElement): string {
  return elementsOf(item, 't')
    .filter(({ parent }) => !(parent instanceof XmlElement && plainName(parent) === 'rPh'))
    .map(({ text }) => text)
    .join('');
}
