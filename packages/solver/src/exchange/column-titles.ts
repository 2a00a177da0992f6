import { Fault } from '../fault/fault.ts';
import type { Wanted } from './column.ts';
import { looksNumeric } from './number-text.ts';
import type { TableRow } from './table.ts';
import { unitOf } from './units.ts';

/** Lines that a header may be preceded by. */
export const PREAMBLE = 30;

/** A line without a number that names two columns wanted, or one that was asked for by its title. */
export function isHeader(
  { cells }: TableRow,
  wanted: readonly Wanted[],
  asked: Readonly<Record<string, string>>,
): boolean {
  if (cells.some(looksNumeric)) return false;
  if (Object.values(asked).some((title) => cells.includes(title))) return true;
  return wanted.filter(({ names }) => cells.some((cell) => names.includes(plain(cell)))).length >= 2;
}

/** Letters of a title that are looked at. */
const TITLE = 200;

/** A title without its unit, marks and digits. */
function plain(title: string): string {
  const words = title
    .slice(0, TITLE)
    .replace(/[([{/].*$/, '')
    .split(/[\s_,-]+/)
    .filter((word) => word !== '');
  while (words.length > 1 && isUnit(words[words.length - 1])) words.pop();
  return words
    .join('')
    .toLowerCase()
    .replace(/[^\p{L}]/gu, '');
}

function isUnit(word: string): boolean {
  return unitOf(word, 'length') !== null || unitOf(word, 'force') !== null;
}

/**
 * Column whose title is one of the names, the first of them that is there; -1 where none is.
 *
 * @throws Fault UNREADABLE when several are
 */
export function titledIndex(titles: readonly string[], { names, key }: Wanted, line: number, what: string): number {
  for (const name of names) {
    const found = titles.flatMap((title, i) => (plain(title) === name ? [i] : []));
    if (found.length > 1)
      throw new Fault(
        'UNREADABLE',
        `Columns ${found.map((i) => i + 1).join(' and ')} on line ${line} of the ${what} could all be ${key}. Rename the others, or name the columns.`,
        '',
        { line, columns: found.map((i) => i + 1) },
      );
    if (found.length === 1) return found[0];
  }
  return -1;
}

/**
 * A line of words with a cell for each column of numbers below it is a header, known or not.
 *
 * @throws Fault UNREADABLE for such a line
 */
export function refuseTitles(rows: readonly TableRow[], what: string): void {
  const numbers = ({ cells }: TableRow) => cells.filter(looksNumeric).length;
  const first = rows.slice(0, PREAMBLE).findIndex((row) => numbers(row) >= 2);
  const above = first < 1 ? undefined : rows[first - 1];
  if (above === undefined || above.cells.filter((cell) => cell !== '').length < numbers(rows[first])) return;
  throw new Fault(
    'UNREADABLE',
    `Line ${above.line} of the ${what} reads like a header, "${above.cells.join(' | ').slice(0, 80)}", but its titles are not known. Name the columns, or rename them, such as "x (mm)" and "y (mm)".`,
    '',
    { line: above.line },
  );
}
