import { TableBody } from '../charts/TableBody.tsx';
import type { NumberRows } from '../format/number-rows.ts';

interface ReportTableProps extends NumberRows {
  readonly title: string;
  /** Under the table, in small print. */
  readonly note?: string | undefined;
  /** Whether cells read as words rather than numbers. */
  readonly words?: boolean;
  /** In larger print. */
  readonly large?: boolean;
  /** With its lines close together, for long lists of small matter. */
  readonly close?: boolean;
  readonly testId?: string;
}

/** A table of no more rows stays on one page. */
const SHORT = 8;
/** One of fewer columns is no wider than what is in it. */
const NARROW = 5;
/** Width of a letter and room between columns, and of the page, mm. */
const LETTER = 1.65;
const BETWEEN = 3;
const PAGE = 178;

/** Whether no cell of a table needs a second line. */
function fits(rows: NumberRows['rows']): boolean {
  const longest = rows[0].map((_, i) => Math.max(...rows.map((row) => row[i].length)));
  return longest.reduce((sum, length) => sum + Math.max(4, length) * LETTER + BETWEEN, 0) <= PAGE;
}

/** A table of the report. Its head comes again on every page that it runs over. */
export function ReportTable({
  title,
  columns,
  rows,
  note,
  words = false,
  large = false,
  close = false,
  testId,
}: ReportTableProps) {
  if (rows.length === 0) return null;
  return (
    <table
      className="report-table"
      data-words={words || undefined}
      data-whole={fits(rows) || undefined}
      data-large={large || undefined}
      data-close={close || undefined}
      data-narrow={columns.length < NARROW || undefined}
      data-short={rows.length <= SHORT || undefined}
      data-testid={testId}
    >
      <caption>
        {title}
        {note !== undefined && <small> {note}</small>}
      </caption>
      <TableBody columns={columns} rows={rows} marksLong />
    </table>
  );
}
