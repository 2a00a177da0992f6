import { Fault } from '../fault/fault.ts';
import type { Site } from '../layout/site.ts';
import { siteName } from '../layout/sites.ts';
import { countOf, type TouchedRows, touchdownSets } from '../layout/touchdowns.ts';
import { didYouMean } from '../plate/near-names.ts';
import type { HeadModel, LoadCase } from './head-model.ts';

/** One case to solve: a case of the model, or one of the sets of touched sites that a case over a wafer stands for. */
export interface HeadLoadCase {
  /** Of the case of the model. */
  readonly index: number;
  /** Unique: results are told apart by it. */
  readonly name: string;
  /** Name of the case of the model that this one was enumerated for; null when it is that case. */
  readonly family: string | null;
  /** Names of the sites touched down. */
  readonly touched: ReadonlySet<string>;
}

/** Most sets of touched sites for a case over a wafer. */
const MOST_SETS = 400;

/**
 * Cases to solve, in the order of the model; a case over a wafer gives one for each set of touched sites, such as
 * `wafer edge: A1 A2 B1`.
 *
 * @throws Fault SCHEMA for a site that is not there, a wafer without dies, or a name used twice; see {@link touchdownSets}
 */
export function headLoadCases(model: HeadModel, sites: readonly Site[]): HeadLoadCase[] {
  const cases = model.cases.flatMap((load, i): HeadLoadCase[] => {
    const path = `cases.${i}`;
    const { name, touched = [] } = load;
    if (typeof touched === 'object' && 'wafer' in touched)
      return waferSets(model, touched.wafer, `${path}.touched.wafer`).map((rows) => ({
        index: i,
        name: `${name}: ${setName(rows, sites.length)}`,
        family: name,
        touched: new Set(rows.flatMap((run, row) => runNames(run, row))),
      }));
    return [{ index: i, name, family: null, touched: touchedSites(name, touched, sites, `${path}.touched`) }];
  });
  requireOwnNames(cases);
  return cases;
}

type WaferOf = Extract<NonNullable<LoadCase['touched']>, { wafer: unknown }>['wafer'];

function waferSets({ sites }: HeadModel, wafer: WaferOf, path: string): TouchedRows[] {
  const { die, skip, columns, rows } = sites;
  if (die === undefined || skip === undefined)
    throw new Fault(
      'SCHEMA',
      `Touchdowns over a wafer at ${path} follow the grid of dies, which "sites" does not give. Use "die": [x, y] in mm with "skip": [x, y] instead of "pitch".`,
      path,
      { expected: '"sites" with "die" and "skip"' },
    );
  const moved = Object.entries(sites.own ?? {}).find(([, { at }]) => at !== undefined);
  if (moved !== undefined)
    throw new Fault(
      'SCHEMA',
      `Touchdowns over a wafer at ${path} follow the grid of dies, from which sites.own moves site ${moved[0]}. Leave its "at" out, or list the touched sites.`,
      path,
      { site: moved[0], expected: 'sites in the pattern' },
    );
  return touchdownSets({ columns, rows, die, skip }, wafer, MOST_SETS, path);
}

/** `A1 A2 B1`; three neighbours and more as `A1-A4`; `all`. */
function setName(rows: TouchedRows, sites: number): string {
  if (countOf(rows) === sites) return 'all';
  return rows
    .flatMap((run, row) => {
      const names = runNames(run, row);
      return names.length > 2 ? [`${names[0]}-${names[names.length - 1]}`] : names;
    })
    .join(' ');
}

function runNames(run: TouchedRows[number], row: number): string[] {
  if (run === null) return [];
  const [first, last] = run;
  return Array.from({ length: last - first + 1 }, (_, i) => siteName(row, first + i));
}

function touchedSites(
  name: string,
  touched: 'all' | readonly string[],
  sites: readonly Site[],
  path: string,
): ReadonlySet<string> {
  const names = sites.map((site) => site.name);
  if (touched === 'all') return new Set(names);
  touched.forEach((site, i) => {
    if (names.includes(site)) return;
    throw new Fault(
      'SCHEMA',
      `Case "${name}" touches site "${site}", which the head does not have.${didYouMean(site, names)} Sites are ${names[0]} to ${names[names.length - 1]}.`,
      `${path}.${i}`,
      { value: site, expected: names.slice(0, 50) },
    );
  });
  return new Set(touched);
}

function requireOwnNames(cases: readonly HeadLoadCase[]): void {
  const seen = new Set<string>();
  for (const { name } of cases) {
    if (seen.has(name))
      throw new Fault(
        'SCHEMA',
        `The name "${name}" stands for a case of its own and for one of the touchdowns over a wafer. Rename one of the two cases.`,
        'cases',
        { value: name },
      );
    seen.add(name);
  }
}
