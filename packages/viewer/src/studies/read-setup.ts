import { fieldText } from '../format/number.ts';
import { parseNumber } from '../format/parse-number.ts';
import type { Setup } from './setup-store.ts';

/** A plan, or what is wrong by field. */
export type Built =
  | { readonly ok: true; readonly plan: Readonly<Record<string, unknown>> }
  | { readonly ok: false; readonly trouble: Readonly<Record<string, string>> };

interface Bounds {
  readonly unit?: string;
  readonly least?: number;
  readonly most?: number;
  readonly whole?: boolean;
}

/** Reads fields one by one and remembers what is wrong with each. */
export function setupReader(setup: Setup) {
  const trouble: Record<string, string> = {};
  const refuse = (field: string, message: string): number => {
    trouble[field] = message;
    return Number.NaN;
  };
  /** The number of a field; NaN where it has none, which is then in trouble. */
  const number = (field: string, { unit = '', least = -1e12, most = 1e12, whole = false }: Bounds = {}): number => {
    const text = setup[field] ?? '';
    const value = parseNumber(text, unit);
    if (value === null)
      return refuse(field, text.trim() === '' ? 'Empty; expected a number.' : `"${text.slice(0, 24)}" is no number.`);
    if (whole && !Number.isInteger(value)) return refuse(field, `${fieldText(value)} is no whole number.`);
    if (value < least || value > most)
      return refuse(
        field,
        `${fieldText(value)} is out of range; expected ${fieldText(least)} to ${fieldText(most)}${unit === '' ? '' : ` ${unit}`}.`,
      );
    return value;
  };
  /** The same; undefined for an empty field. */
  const optional = (field: string, bounds?: Bounds): number | undefined =>
    (setup[field] ?? '').trim() === '' ? undefined : number(field, bounds);
  const built = (plan: Readonly<Record<string, unknown>>): Built =>
    Object.keys(trouble).length > 0 ? { ok: false, trouble } : { ok: true, plan: bare(plan) };
  return { number, optional, refuse, built };
}

/** Without what is undefined. */
function bare(plan: Readonly<Record<string, unknown>>): Readonly<Record<string, unknown>> {
  return Object.fromEntries(Object.entries(plan).filter(([, value]) => value !== undefined));
}
