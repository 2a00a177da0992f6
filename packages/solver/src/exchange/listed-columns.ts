import type { FileContent } from './file-text.ts';
import { looksNumeric } from './number-text.ts';
import { readTable, type TableRow } from './table.ts';

/** A column of a list: what it is asked for by, and what tells a reader which it is. */
export interface ListedColumn {
  /** Its title, or its number from 1 where it has none of its own. */
  readonly name: string;
  /** The title, or the number with its first value: `2: 0.4`. */
  readonly label: string;
}

/** Rows that are looked at. */
const LOOKED = 100;

/**
 * Columns of a list as text or workbook, so that a reader can be told which is what.
 *
 * @param sheet of a workbook; the first that is shown if left out
 * @throws Fault UNREADABLE, USAGE or TOO_LARGE as its reading does
 */
export function listedColumns(content: FileContent, sheet?: string): ListedColumn[] {
  const { rows, comments } = readTable(content, 'list', sheet);
  const looked = rows.slice(0, LOOKED);
  const numbers = ({ cells }: TableRow): number => cells.filter(looksNumeric).length;
  const first = Math.max(
    0,
    looked.findIndex((row) => numbers(row) >= 2),
  );
  const above = looked.slice(0, first).findLast(isHeader) ?? comments.findLast(isHeader);
  const count = Math.max(...looked.map(({ cells }) => cells.length));
  const titles = Array.from({ length: count }, (_, i) => above?.cells[i] ?? '');
  return titles.map((title, i) => {
    const number = String(i + 1);
    const isName = title !== '' && titles.indexOf(title) === titles.lastIndexOf(title);
    return isName
      ? { name: title, label: title }
      : { name: number, label: `${number}: ${looked[first]?.cells[i] ?? ''}`.trim() };
  });
}

/** Two words and no number. */
function isHeader({ cells }: TableRow): boolean {
  return cells.filter((cell) => cell !== '').length >= 2 && !cells.some(looksNumeric);
}
