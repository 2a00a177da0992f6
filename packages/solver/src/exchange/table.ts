import Papa from 'papaparse';
import { Fault } from '../fault/fault.ts';
import { LONGEST_TEXT } from '../plate/read-json.ts';
import { decimalOf, doubtOf } from './decimal-sign.ts';
import { delimiterName, delimiterOf } from './delimiter.ts';
import { type FileContent, fileText } from './file-text.ts';
import { isPacked } from './package-parts.ts';
import { readSheet, type Sheet } from './workbook.ts';

/** A list as rows of cells. */
export interface Table {
  readonly rows: readonly TableRow[];
  /** Lines that begin with a comment mark, without it, before the first row. */
  readonly comments: readonly TableRow[];
  /** Empty for a sheet. */
  readonly delimiter: string;
  readonly decimal: '.' | ',';
  /** Whether a number shows that the other sign groups thousands, such as `1,250.5`. */
  readonly isGrouped: boolean;
  readonly guesses: readonly string[];
}

export interface TableRow {
  /** From 1. */
  readonly line: number;
  readonly cells: readonly string[];
}

/** Lines that the separator is judged by. */
const JUDGED = 60;
/** Rows that are read, no head has as many probes and no map as many points; and cells in one, letters in one. */
export const MOST_ROWS = 100_000;
const [MOST_CELLS, MOST_LETTERS] = [1000, 10_000];
/** Lines before the first row of numbers, at most. */
const SPARE = 100;

/**
 * Cells of a list: those of a sheet of a workbook, or of a text; see {@link readSheet} and {@link readText}.
 *
 * @param sheet of a workbook; the first that is shown if left out
 * @throws Fault UNREADABLE when it is empty or neither; USAGE for a sheet that is not there; TOO_LARGE, also for a row of
 *   thousands of cells
 */
export function readTable(content: FileContent, what: string, sheet?: string): Table {
  if (isPacked(content)) return sheetTable(readSheet(content, sheet, what), what);
  const { text, guesses } = fileText(content, what);
  const table = readText(text, what);
  return { ...table, guesses: [...guesses, ...table.guesses] };
}

function sheetTable({ rows: all, guesses }: Sheet, what: string): Table {
  if (all.length === 0)
    throw new Fault('UNREADABLE', `The sheet of the ${what} is empty. ${guesses[0]} Name another one.`);
  // Numbers are numbers; the decimal sign is that of numbers typed as text.
  const words = all.map(({ line, cells }) => ({ line, cells: cells.filter((cell) => typeof cell === 'string') }));
  const { decimal, isGrouped, doubtful } = decimalOf(words);
  const table = all.map(({ line, cells }) => ({
    line,
    cells: cells.map((cell) => (typeof cell === 'number' ? String(cell).replace('.', decimal) : cell)),
  }));
  const rows = table.filter(({ cells }) => !isComment(cells[0]));
  const before = table.slice(0, rows.length === 0 ? table.length : table.indexOf(rows[0]));
  const comments = before.map(({ line, cells }) => ({ line, cells: unmarked(cells, '') }));
  return { rows, comments, delimiter: '', decimal, isGrouped, guesses: [...guesses, ...doubtOf(doubtful)] };
}

/**
 * Cells of a list as text, whose separator and decimal sign are found out: tabs, semicolons, bars, commas or blanks;
 * quotes and line ends of any kind; a byte order mark and a first line `sep=;` are passed over, lines that begin with
 * `#` or `//` are comments.
 */
function readText(text: string, what: string): Table {
  if (text.length > LONGEST_TEXT)
    throw new Fault(
      'TOO_LARGE',
      `The ${what} has ${(text.length / 1e6).toFixed(1)} million characters; at most ${LONGEST_TEXT / 1e6} million are read. Split it.`,
      '',
      { value: text.length },
    );
  if (text.includes('\0'))
    throw new Fault(
      'UNREADABLE',
      `The ${what} is no plain text: it holds NUL characters. Save it as CSV in UTF-8, not UTF-16 or a workbook.`,
    );
  const body = text.replace(/^\uFEFF/, '').replace(/\r\n?/g, '\n');
  const said = /^sep=(.)\n/i.exec(body);
  const sample = firstLines(body).slice(said === null ? 0 : 1, JUDGED);
  if (sample.length === 0)
    throw new Fault('UNREADABLE', `The ${what} is empty. Check that the right file was given.`, '', { line: 1 });
  const delimiter = said?.[1] ?? delimiterOf(sample);
  const rows: TableRow[] = [];
  const comments: TableRow[] = [];
  let passed = 0;
  let line = 1;
  let from = 0;
  const source = delimiter === ' ' ? body.replace(/[^\S\n]+/g, ' ').replace(/^ | $/gm, '') : body;
  Papa.parse<string[]>(source, {
    delimiter,
    newline: '\n',
    step({ data, errors, meta }) {
      const at = line;
      for (const end = meta.cursor; from < end; from++) if (source[from] === '\n') line++;
      if (errors.some(({ type }) => type === 'Quotes'))
        throw new Fault(
          'UNREADABLE',
          `A quotation mark on line ${at} of the ${what} is not closed as it should be. Remove or double it.`,
          '',
          { line: at },
        );
      if (data.length > MOST_CELLS)
        throw tooLarge(`line ${at} of the ${what} has ${data.length} cells`, MOST_CELLS, at);
      const cells = data.map((cell) => cell.trim());
      if (cells.some((cell) => cell.length > MOST_LETTERS))
        throw tooLarge(`a cell on line ${at} of the ${what} is long`, `${MOST_LETTERS} letters`, at);
      if (cells.every((cell) => cell === '')) return;
      if (isComment(cells[0])) {
        passed++;
        if (rows.length === 0) comments.push({ line: at, cells: unmarked(cells, delimiter) });
      } else if (at > 1 || said === null) rows.push({ line: at, cells });
      if (rows.length > MOST_ROWS + SPARE) throw tooLarge(`the ${what} has more rows`, MOST_ROWS, at);
    },
  });
  const { decimal, isGrouped, doubtful } = decimalOf(rows);
  return {
    rows,
    comments,
    delimiter,
    decimal,
    isGrouped,
    guesses: [
      `Cells are separated by ${delimiterName(delimiter)}, decimals by a ${decimal === ',' ? 'comma' : 'point'}.`,
      ...(passed === 0 ? [] : [`${passed} comment ${passed === 1 ? 'line was' : 'lines were'} passed over.`]),
      ...doubtOf(doubtful),
    ],
  };
}

/** The first lines that say something. */
function firstLines(body: string): string[] {
  const lines: string[] = [];
  for (let from = 0; from < body.length && lines.length < JUDGED; ) {
    const found = body.indexOf('\n', from);
    const end = found < 0 ? body.length : found;
    const line = body.slice(from, end);
    if (line.trim() !== '' && !isComment(line)) lines.push(line);
    from = end + 1;
  }
  return lines;
}

function tooLarge(what: string, most: number | string, line: number): Fault {
  const said = `${what[0].toUpperCase()}${what.slice(1)}`;
  return new Fault('TOO_LARGE', `${said}; at most ${most} are read. Check the file, or split it.`, '', { line });
}

function isComment(line: string): boolean {
  return /^\s*(#|\/\/)/.test(line);
}

/** A comment without its mark, which may be a cell of its own. */
function unmarked([first, ...others]: readonly string[], delimiter: string): string[] {
  const bare = first.replace(/^\s*(#|\/\/)+\s*/, '');
  if (bare === '' && delimiter === ' ') return others;
  return [bare === '' ? '#' : bare, ...others];
}
