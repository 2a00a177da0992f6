import { Fault } from '../fault/fault.ts';
import type { Wanted } from './column.ts';
import { type FoundColumns, findColumns } from './columns.ts';
import type { FileContent } from './file-text.ts';
import { numberOf } from './number-text.ts';
import type { Dropped, Preview } from './reading.ts';
import { MOST_ROWS, readTable, type TableRow } from './table.ts';
import { askedUnit, factorOf, type Quantity } from './units.ts';

/** One row of a list with its numbers in mm and N. */
export interface ListedRow {
  readonly line: number;
  /** By column; left out where the cell is empty and need not be filled. */
  readonly numbers: Readonly<Record<string, number>>;
  readonly words: Readonly<Record<string, string>>;
}

export interface ListOptions {
  /** Unit of lengths, such as `um`, where the file gives none. */
  readonly units?: string | undefined;
  /** Unit of forces likewise. */
  readonly forceUnits?: string | undefined;
  /** Unit of the column z likewise; that of all lengths if left out. */
  readonly heightUnits?: string | undefined;
  /** Sheet of a workbook by its name; the first that is shown if left out. */
  readonly sheet?: string | undefined;
  /** Columns by what they are, each named by its title or its number from 1. */
  readonly columns?: Readonly<Record<string, string>> | undefined;
}

export interface RowList extends Pick<Preview, 'units' | 'guesses' | 'dropped'> {
  readonly rows: readonly ListedRow[];
  readonly found: FoundColumns['columns'];
}

/** Extent beyond which numbers without a unit can't be mm. */
const WIDEST = 1000;

/** Lines at the end of a list that may be totals. */
const LAST = 12;
const TOTAL =
  /^(grand )?(totals?|sum|mean|average|avg|min(imum)?|max(imum)?|count|median|range|std ?dev|summe|gesamt|mittelwert|anzahl)\W*$/i;

function isTotal({ cells }: TableRow): boolean {
  return TOTAL.test(cells.find((cell) => cell !== '') ?? '');
}

/**
 * Rows of a list with the columns wanted, in mm and N.
 *
 * @param plane names of the columns whose extent a missing unit is guessed from
 * @throws Fault UNREADABLE, USAGE or TOO_LARGE
 */
export function readList(
  content: FileContent,
  wanted: readonly Wanted[],
  plane: readonly string[],
  options: ListOptions,
  what: string,
): RowList {
  const given = {
    length: askedUnit(options.units, 'length'),
    force: askedUnit(options.forceUnits, 'force'),
    height: askedUnit(options.heightUnits, 'length'),
  };
  const table = readTable(content, what, options.sheet);
  const said = new Set<Quantity>((['length', 'force'] as const).filter((quantity) => given[quantity] !== null));
  const { columns, rows, guesses, dropped } = findColumns(table, wanted, options.columns ?? {}, said, what);
  if (rows.length > MOST_ROWS)
    throw new Fault('TOO_LARGE', `The ${what} has ${rows.length} rows; at most ${MOST_ROWS} are read. Split it.`, '', {
      value: rows.length,
    });
  const lost: Dropped[] = [...dropped];
  const kept: { row: TableRow; raw: Record<string, { value: number; unit: string | null }> }[] = [];
  for (const [i, row] of rows.entries()) {
    const read =
      i >= rows.length - LAST && isTotal(row) ? `"${row.cells.find(Boolean)}" makes it a total` : cellsOf(row);
    if (typeof read === 'string') lost.push({ line: row.line, reason: read });
    else kept.push({ row, raw: read });
  }
  const { length, basis, sentence } = lengthUnit();
  const units = { length, force: given.force ?? 'N' };
  return {
    rows: kept.map(({ row, raw }) => ({
      line: row.line,
      numbers: Object.fromEntries(Object.entries(raw).map(([key, { value, unit }]) => [key, inBase(key, value, unit)])),
      words: Object.fromEntries(
        wanted
          .filter(({ key, quantity }) => quantity === null && columns[key] !== undefined)
          .map(({ key }) => [key, row.cells[columns[key].index] ?? '']),
      ),
    })),
    found: columns,
    units: { length, basis },
    guesses: [...table.guesses, ...guesses, ...sentence, ...forceSentence()],
    dropped: lost.sort((a, b) => a.line - b.line),
  };

  function cellsOf({ cells }: TableRow): string | Record<string, { value: number; unit: string | null }> {
    const raw: Record<string, { value: number; unit: string | null }> = {};
    for (const { key, quantity, required } of wanted) {
      const column = columns[key];
      if (column === undefined || quantity === null) continue;
      const cell = cells[column.index] ?? '';
      if (cell === '' && !required) continue;
      const number = numberOf(cell, table.decimal, quantity, table.isGrouped);
      if (number.value === null) return `${key} ${number.reason}`;
      raw[key] = { value: number.value, unit: number.unit };
    }
    return raw;
  }

  function quantityOf(key: string): Quantity {
    return wanted.find((column) => column.key === key)!.quantity!;
  }

  /** A unit in the cell wins over one in the header, and that over the one of the whole list. */
  function inBase(key: string, value: number, unit: string | null): number {
    if (unit !== null) return value;
    const quantity = quantityOf(key);
    return value * factorOf(columns[key].unit ?? (key === 'z' ? given.height : null) ?? units[quantity], quantity);
  }

  /** What forces without a unit are taken as. */
  function forceSentence(): string[] {
    const key = wanted.find(({ quantity }) => quantity === 'force')?.key;
    if (key === undefined || columns[key] === undefined || columns[key].unit !== null || given.force !== null)
      return [];
    const bare = kept.flatMap(({ raw }) => (raw[key]?.unit === null ? [raw[key].value] : []));
    if (bare.length === 0) return [];
    const [low, high] = [bare.reduce((a, b) => Math.min(a, b)), bare.reduce((a, b) => Math.max(a, b))];
    return [`Forces without a unit are taken as N: they are ${low} to ${high}. Give the unit if that is wrong.`];
  }

  function lengthUnit(): { length: string; basis: Preview['units']['basis']; sentence: string[] } {
    const titled = [...new Set(plane.map((key) => columns[key]?.unit ?? null))];
    const known = titled.every((unit) => unit !== null);
    const bare = kept.filter(({ raw }) => plane.some((key) => raw[key]?.unit === null));
    if (known || (bare.length === 0 && kept.length > 0)) {
      const length = titled[0] ?? 'mm';
      const mixed = titled.length > 1 || (!known && kept.length > 0);
      return {
        length,
        basis: 'file',
        sentence: mixed ? ['Lengths have units of their own from column to column or cell to cell.'] : [],
      };
    }
    if (given.length !== null) return { length: given.length, basis: 'given', sentence: [] };
    let widest = 0;
    for (const key of plane) {
      let [low, high] = [Infinity, -Infinity];
      for (const { raw } of bare) {
        const value = raw[key]?.unit === null ? raw[key].value : null;
        if (value === null) continue;
        [low, high] = [Math.min(low, value), Math.max(high, value)];
      }
      widest = Math.max(widest, high - low);
    }
    const length = widest > WIDEST ? 'um' : 'mm';
    const because = `numbers spread over ${Number(widest.toPrecision(4))}`;
    return {
      length,
      basis: 'guessed',
      sentence: [`Lengths without a unit are taken as ${length}: ${because}. Give the unit if that is wrong.`],
    };
  }
}
