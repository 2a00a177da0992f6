/**
 * Text of a cell that no spreadsheet takes for a formula: what begins with = + - @, a tab or a line end gets an
 * apostrophe before it, as such programs write text themselves. Readers of this package take it off again.
 */
export function guarded(text: string): string {
  return /^[=+\-@\t\r\n]/.test(text) ? `'${text}` : text;
}

/** The text before it was guarded. */
export function unguarded(text: string): string {
  return /^'[=+\-@\t\r\n]/.test(text) ? text.slice(1) : text;
}

export type Cell = string | number | null;

/**
 * Comma-separated values (RFC 4180) with comment lines on top; numbers with a decimal point, to 1e-9.
 *
 * @param comments one line each, without the mark
 */
export function csvText(
  comments: readonly string[],
  header: readonly string[],
  rows: Iterable<readonly Cell[]>,
): string {
  const lines = comments.map((comment) => `# ${comment.replace(/[\r\n]+/g, ' ')}`);
  lines.push(header.join(','));
  for (const row of rows) lines.push(row.map(cellText).join(','));
  return `${lines.join('\r\n')}\r\n`;
}

function cellText(cell: Cell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return numberText(cell);
  const text = guarded(cell);
  return /[",\r\n#]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** Shortest text of a number to nine digits behind the point, and to nine digits in all below that. */
export function numberText(value: number): string {
  if (!Number.isFinite(value)) return '';
  if (value !== 0 && Math.abs(value) < 1e-4) return String(Number(value.toPrecision(9)));
  return String(Number(value.toFixed(9)) + 0);
}
