import { Fault } from '../fault/fault.ts';
import type { FoundColumn, Wanted } from './column.ts';
import { looksNumeric } from './number-text.ts';
import type { TableRow } from './table.ts';

/** Without a header: the numeric columns in order, but for one that counts rows. @throws Fault UNREADABLE when there are more */
export function byPlace(
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
