import type { LoadCase } from '@flathead/solver';

export type TouchKind = 'none' | 'all' | 'list' | 'wafer';
type Touched = LoadCase['touched'];

/** How a load case says which sites are touched. */
export function touchKind(touched: Touched): TouchKind {
  if (touched === undefined) return 'none';
  if (touched === 'all') return 'all';
  return Array.isArray(touched) ? 'list' : 'wafer';
}

/**
 * What stands in the model when a way of touching is chosen.
 *
 * @param sites names of the sites of the head; a list starts with the first
 */
export function touchedBy(kind: TouchKind, sites: readonly string[]): Touched {
  if (kind === 'none') return undefined;
  if (kind === 'all') return 'all';
  return kind === 'list' ? sites.slice(0, 1) : { wafer: { diameter: 300, edge: 3 } };
}

/**
 * Names of sites as typed, apart by spaces or commas, in either case: `A1 a2, B3`.
 *
 * @returns the names as the head has them, each once, and the first that it does not have; `null` when it has them all
 */
export function parseSites(
  text: string,
  sites: readonly string[],
): { readonly names: string[]; readonly unknown: string | null } {
  const typed = text.split(/[\s,;]+/).filter((name) => name !== '');
  const known = new Map(sites.map((name) => [name.toUpperCase(), name]));
  const unknown = typed.find((name) => !known.has(name.toUpperCase())) ?? null;
  return { names: [...new Set(typed.flatMap((name) => known.get(name.toUpperCase()) ?? []))], unknown };
}
