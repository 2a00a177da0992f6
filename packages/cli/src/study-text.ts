import type { Figure, Judged } from '@flathead/solver';
import { plain, um } from './format.ts';
import type { Paint } from './terminal.ts';

/** An amount in the unit that its criterion is shown in, with the unit. */
export function amount(value: number, unit: Figure['unit']): string {
  return unit === 'mm' ? `${um(value)} um` : unit === 'N' ? `${plain(value)} N` : plain(value);
}

/** The outcome of a variant in its colour, or the code of its fault. */
export function outcomeText({ outcome, fault }: Judged, paint: Paint): string {
  if (outcome === undefined) return paint.red(fault?.code ?? '');
  return { pass: paint.green, marginal: paint.yellow, fail: paint.red }[outcome](outcome);
}

/** What a figure is called, with its unit. */
export function figureHeading(criterion: string, { unit }: Figure): string {
  const name = criterion === 'failureProbability' ? 'failure probability' : criterion;
  return unit === '1' ? name : `${name}, ${unit === 'mm' ? 'um' : unit}`;
}

/** A figure without its unit. */
export function figureCell({ value, unit }: Figure): string {
  return unit === 'mm' ? um(value) : plain(value);
}

/** Faults of rows, each message once. */
export function faultLines(rows: readonly Judged[], paint: Paint): string[] {
  const messages = new Map<string, number>();
  for (const { fault } of rows)
    if (fault !== undefined) messages.set(fault.message, (messages.get(fault.message) ?? 0) + 1);
  return [...messages].slice(0, 5).map(([message, count]) => paint.dim(`  ${count} x ${message}`));
}
