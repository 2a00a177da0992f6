import { Fault } from '../fault/fault.ts';
import { looksNumeric } from './number-text.ts';
import type { Dropped } from './reading.ts';
import type { Table, TableRow } from './table.ts';
import { titleUnit, unitRow } from './title-unit.ts';
import { type Quantity, unitOf } from './units.ts';

/** A column that a reader looks for. */
export interface Wanted {
  readonly key: string;
  /** Names that headers give it, in small letters without marks and digits. */
  readonly names: readonly string[];
  /** `null` where it holds words. */
  readonly quantity: Quantity | null;
  readonly required: boolean;
}

export interface FoundColumn {
  /** From 0. */
  readonly index: number;
  /** As the header has it; null without a header. */
  readonly title: string | null;
  /** Unit that the header gives. */
  readonly unit: string | null;
}

export interface FoundColumns {
  readonly columns: Readonly<Record<string, FoundColumn>>;
  readonly rows: readonly TableRow[];
  readonly guesses: readonly string[];
  readonly dropped: readonly Dropped[];
}

/** Lines that a header may be preceded by. */
const PREAMBLE = 30;

/**
 * Which column is what: as the caller says (by title or number, from 1), by the titles of a header line, or else the
 * only numeric columns in the order wanted. A line of units below the header counts as part of it.
 *
 * @param given quantities whose unit the caller gives: it stands in for one that a title gives and that is not known
 * @throws Fault UNREADABLE or USAGE when a column that is needed can't be told
 */
export function findColumns(
  { rows, comments, delimiter }: Table,
  wanted: readonly Wanted[],
  asked: Readonly<Record<string, string>>,
  given: ReadonlySet<Quantity>,
  what: string,
): FoundColumns {
  const unknown = Object.keys(asked).find((key) => wanted.every((column) => column.key !== key));
  if (unknown !== undefined)
    throw new Fault('USAGE', `A ${what} has no column "${unknown}". Name ${wanted.map(({ key }) => key).join(', ')}.`);
  const at = rows.slice(0, PREAMBLE).findIndex((row) => isHeader(row, wanted, asked));
  const commented = at < 0 ? comments.findLast((row) => isHeader(row, wanted, asked)) : undefined;
  const header = commented ?? (at < 0 ? null : rows[at]);
  const below = rows[at + 1];
  const units = header === null || below === undefined ? null : unitRow(below.cells);
  const body = rows.slice(at + (units === null ? 1 : 2));
  const dropped = rows
    .slice(0, Math.max(0, at))
    .map(({ line, cells }) => ({ line, reason: `"${cells.join(' ').slice(0, 40)}" stands before the header` }));
  const titles = header?.cells ?? null;
  const columns: Record<string, FoundColumn> = {};
  for (const column of wanted) {
    const index =
      asked[column.key] !== undefined
        ? askedIndex(asked[column.key], titles, body, column.key, what)
        : titles === null
          ? -1
          : titledIndex(titles, column, header!.line, what);
    if (index < 0) continue;
    const title = titles?.[index] ?? null;
    const { quantity } = column;
    const unit =
      title === null || quantity === null
        ? null
        : (unitOf(units?.[index] ?? '', quantity) ??
          titleUnit(title, quantity, given.has(quantity), header!.line, what));
    columns[column.key] = { index, title, unit };
  }
  if (titles === null && Object.keys(asked).length === 0) {
    refuseTitles(rows, what);
    byPlace(body, wanted, columns, what);
  }
  for (const { key, required } of wanted)
    if (required && columns[key] === undefined)
      throw new Fault(
        'UNREADABLE',
        titles === null
          ? `No column of the ${what} can be told to be ${key}: it has no header, and line ${rows[0]?.line ?? 1} reads "${(rows[0]?.cells ?? []).join(' | ').slice(0, 60)}". Give it a header such as "x (mm)", or name the columns by number.`
          : `The header on line ${header!.line} of the ${what} has no column for ${key}: ${titles
              .map((title) => `"${title}"`)
              .join(', ')
              .slice(0, 200)}. Rename one, or name the columns.`,
        '',
        { line: header?.line ?? 1, expected: wanted.filter((column) => column.required).map((column) => column.key) },
      );
  const sound = titles === null ? body : body.filter((row) => fits(row));
  const told = Object.entries(columns).map(([key, { index, title }]) =>
    title === null ? `column ${index + 1} as ${key}` : `"${title}" as ${key}`,
  );
  const spare = titles === null ? [] : titles.filter((title, i) => title !== '' && !usedAt(columns, i));
  return {
    columns,
    rows: sound,
    guesses: [
      `Read ${told.join(', ')}${titles === null ? ', by their place: there is no header' : ''}.`,
      ...(commented === undefined ? [] : [`The header stands in the comment on line ${commented.line}.`]),
      ...(units === null ? [] : [`Line ${below.line} gives the units.`]),
      ...(spare.length === 0 ? [] : [`Columns not read: ${spare.map((title) => `"${title}"`).join(', ')}.`]),
    ],
    dropped,
  };

  /** Cells beyond the titles come from separators within cells; between blanks any other number of cells does. */
  function fits({ line, cells }: TableRow): boolean {
    const [count, most] = [cells.length, titles!.length];
    if (delimiter === '') return true;
    const isSound = delimiter === ' ' ? count === most : cells.slice(most).every((cell) => cell === '');
    if (!isSound)
      dropped.push({
        line,
        reason: `it has ${count} cells where the header has ${most}: the sign between cells stands within some of them too; export the list with another one, or put such cells in quotes`,
      });
    return isSound;
  }
}

function usedAt(columns: Readonly<Record<string, FoundColumn>>, i: number): boolean {
  return Object.values(columns).some(({ index }) => index === i);
}

/** A line without a number that names two columns wanted, or one that was asked for by its title. */
function isHeader({ cells }: TableRow, wanted: readonly Wanted[], asked: Readonly<Record<string, string>>): boolean {
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

function titledIndex(titles: readonly string[], { names, key }: Wanted, line: number, what: string): number {
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

function askedIndex(
  name: string,
  titles: readonly string[] | null,
  rows: readonly TableRow[],
  key: string,
  what: string,
): number {
  const titled = titles?.indexOf(name) ?? -1;
  if (titled >= 0) return titled;
  const number = /^\d+$/.test(name) ? Number(name) : 0;
  const most = Math.max(0, titles?.length ?? 0, ...rows.slice(0, 100).map(({ cells }) => cells.length));
  if (number >= 1 && number <= most) return number - 1;
  throw new Fault(
    'USAGE',
    `The ${what} has no column "${name}" to take as ${key}. Use a title, or a number from 1 to ${most}.`,
    '',
    { value: name, expected: titles ?? most },
  );
}

/** A line of words with a cell for each column of numbers below it is a header, known or not. */
function refuseTitles(rows: readonly TableRow[], what: string): void {
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

/** Without a header: the numeric columns in order, but for one that counts rows. @throws Fault UNREADABLE when there are more */
function byPlace(
  rows: readonly TableRow[],
  wanted: readonly Wanted[],
  columns: Record<string, FoundColumn>,
  what: string,
): void {
  const sample = rows.slice(0, 50);
  const width = Math.max(0, ...sample.map(({ cells }) => cells.length));
  const numeric = Array.from({ length: width }, (_, i) => i).filter(
    (i) => sample.filter(({ cells }) => looksNumeric(cells[i] ?? '')).length > sample.length / 2,
  );
  const required = wanted.filter((column) => column.required);
  const first = numeric[0];
  const counts =
    numeric.length > required.length &&
    sample.length > 1 &&
    sample.every(({ cells }, k) => Number(cells[first]) === Number(sample[0].cells[first]) + k);
  const places = counts ? numeric.slice(1) : numeric;
  if (places.length > required.length)
    throw new Fault(
      'UNREADABLE',
      `The ${what} has no header, and ${places.length} columns of numbers where ${required.map(({ key }) => key).join(', ')} are looked for. Give it a header such as "x (mm)", or name the columns by number.`,
      '',
      { line: rows[0]?.line ?? 1, value: places.length, expected: required.length },
    );
  required.forEach(({ key }, k) => {
    if (places[k] !== undefined) columns[key] = { index: places[k], title: null, unit: null };
  });
}
