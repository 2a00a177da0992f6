import { Fault } from '../fault/fault.ts';
import type { FoundColumn, Wanted } from './column.ts';
import { isHeader, PREAMBLE, refuseTitles, titledIndex } from './column-titles.ts';
import { byPlace } from './columns-by-place.ts';
import type { Dropped } from './reading.ts';
import type { Table, TableRow } from './table.ts';
import { titleUnit, unitRow } from './title-unit.ts';
import { type Quantity, unitOf } from './units.ts';

export interface FoundColumns {
  readonly columns: Readonly<Record<string, FoundColumn>>;
  readonly rows: readonly TableRow[];
  readonly guesses: readonly string[];
  readonly dropped: readonly Dropped[];
}

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
