import type { HeadModel } from '@flathead/solver';

/** One difference between two heads, in the words of the trade. Names and notes are none. */
export interface Change {
  /** Tells it from the others. */
  readonly id: string;
  /** Such as `body 4.5 → 5.5 mm`. */
  readonly words: string;
  /** A head with this difference made, and no other. */
  readonly make: (model: HeadModel) => HeadModel;
}

/** `A`, `A and B`, `A, B and C`, `A, B, C and 3 more`. */
export function listed(names: readonly string[]): string {
  const shown = names.length > 4 ? [...names.slice(0, 3), `${names.length - 3} more`] : names;
  return shown.length < 2 ? (shown[0] ?? '') : `${shown.slice(0, -1).join(', ')} and ${shown.at(-1)}`;
}

/** Whether two values of plain data are the same; a key left out is the same as one without a value. */
export function same(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const [x, y]: Record<string, unknown>[] = [{ ...a }, { ...b }];
  return [...new Set([...Object.keys(x), ...Object.keys(y)])].every((key) => same(x[key], y[key]));
}
