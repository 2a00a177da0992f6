import { micrometres } from '@flathead/solver';

/** Micrometres as everywhere in Flathead, without the unit. */
export function um(mm: number): string {
  return micrometres(mm).replace(' um', '');
}

/** Three significant digits and more, never an exponent for everyday sizes. */
export function plain(value: number): string {
  if (value === 0) return '0';
  const size = Math.abs(value);
  if (size >= 1e7 || size < 1e-4) return value.toExponential(2);
  return value.toFixed(size >= 1000 ? 0 : Math.max(0, 3 - Math.floor(Math.log10(size)) - 1));
}

export function newtons(value: number): string {
  return (Math.abs(value) >= 99.95 ? value.toFixed(0) : value.toFixed(1)).replace(/^-0\.0$/, '0.0');
}

export function place(point: readonly [number, number]): string {
  return point.map((c) => c.toFixed(2).replace(/^-0\.00$/, '0.00')).join(', ');
}
