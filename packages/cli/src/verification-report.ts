import type { VerificationRow } from '@flathead/solver/verification';
import { table } from './table.ts';
import type { Paint } from './terminal.ts';

const HEADINGS = ['case', 'source gives', 'here', 'unit', 'off by', 'allowed', 'order', 'basis'];

/** A table for each topic, then how many cases are within their tolerance and which are not. */
export function verificationText(rows: readonly VerificationRow[], paint: Paint): string {
  const parts = byTopic(rows).map(([topic, cases]) => {
    const lines = cases.map((row) => [
      `${row.within ? ' ' : '!'} ${row.model}: ${row.quantity}`,
      digits(row.expected),
      digits(lastOf(row)),
      row.unit,
      share(row.deviation),
      share(row.tolerance),
      row.order === null ? '-' : row.order.toFixed(1),
      row.basis,
    ]);
    return `${paint.bold(topic)}\n${table(HEADINGS, lines, paint, [3, 7])}`;
  });
  const outside = rows.filter(({ within }) => !within);
  const count = `${rows.length - outside.length} of ${rows.length} cases within their tolerance`;
  parts.push(outside.length === 0 ? count : paint.bold(`${count}; outside are marked !`));
  return `${parts.join('\n\n')}\n`;
}

/** Rows in their order under the name of their topic. */
export function byTopic(rows: readonly VerificationRow[]): [string, VerificationRow[]][] {
  const topics = new Map<string, VerificationRow[]>();
  for (const row of rows) topics.set(row.topic, [...(topics.get(row.topic) ?? []), row]);
  return [...topics];
}

const lastOf = ({ values }: VerificationRow): number => values[values.length - 1];

/** Six significant digits. */
export const digits = (value: number): string => (value === 0 ? '0' : Number(value.toPrecision(6)).toString());

/** A share in percent, or as a power of ten where that is too small for it. */
export function share(value: number): string {
  const size = Math.abs(value);
  return size >= 5e-6 ? `${(100 * value).toFixed(size < 0.001 ? 3 : 2)} %` : size === 0 ? '0' : value.toExponential(0);
}
