import { Fault } from '../fault/fault.ts';
import type { Site } from '../layout/site.ts';
import { didYouMean } from '../plate/near-names.ts';
import type { Probes, Sites } from './head-model.ts';

type Positions = NonNullable<Probes['positions']>;

/** Probes of one site. */
export interface SiteProbes {
  readonly count: number;
  /** Sum of their board-side preloads, N. */
  readonly preload: number;
  /** x, y in mm and preload in N of each; `null` where they are spread evenly over the field. */
  readonly points: [number, number, number][] | null;
}

/** Listed probes of all sites together: each is a row of the model or a point of its loads. */
const MOST_LISTED = 100_000;
/** A probe this far outside of its field still counts as inside, mm. */
const ROUNDING = 1e-6;

/**
 * Probes of each site, in the order of the sites.
 *
 * @throws Fault SCHEMA, OUTSIDE, OVERLAP or TOO_LARGE with the path of what makes no sense
 */
export function siteProbes({ probes, own = {} }: Sites, sites: readonly Site[]): SiteProbes[] {
  requireKnown(
    Object.keys(own),
    sites.map(({ name }) => name),
  );
  const { positions } = probes;
  if (positions !== undefined) {
    if (probes.count !== positions.length)
      throw new Fault(
        'SCHEMA',
        `sites.probes.count is ${probes.count}, but positions lists ${positions.length} probes. Make the count ${positions.length}, or correct the list.`,
        'sites.probes.count',
        { value: probes.count, expected: positions.length },
      );
    requireSingle(positions, 'sites.probes.positions');
  }
  const listed = sites.map((site): SiteProbes => {
    const mine = Object.hasOwn(own, site.name) ? own[site.name].positions : undefined;
    const path = mine === undefined ? 'sites.probes.positions' : `sites.own.${site.name}.positions`;
    if (mine !== undefined) requireSingle(mine, path);
    const list = mine ?? positions;
    if (list === undefined) return { count: probes.count, preload: probes.count * probes.preload, points: null };
    requireInField(list, site, path);
    const points = list.map(([x, y, preload = probes.preload]): [number, number, number] => [
      site.centre[0] + x,
      site.centre[1] + y,
      preload,
    ]);
    return { count: list.length, preload: points.reduce((sum, [, , preload]) => sum + preload, 0), points };
  });
  const count = listed.reduce((sum, { points }) => sum + (points?.length ?? 0), 0);
  if (count > MOST_LISTED)
    throw new Fault(
      'TOO_LARGE',
      `The sites list ${count} probes together; at most ${MOST_LISTED} are solved one by one. Leave positions out to spread them evenly over their fields.`,
      'sites.probes.positions',
      { value: count, expected: `at most ${MOST_LISTED}` },
    );
  return listed;
}

function requireKnown(own: readonly string[], names: readonly string[]): void {
  const known = new Set(names);
  const stray = own.find((name) => !known.has(name));
  if (stray === undefined) return;
  throw new Fault(
    'SCHEMA',
    `sites.own has a site "${stray}", which the pattern does not have.${didYouMean(stray, names)} Sites are ${names[0]} to ${names[names.length - 1]}.`,
    `sites.own.${stray}`,
    { value: stray, expected: names.slice(0, 50) },
  );
}

function requireInField(list: Positions, { name, field: [width, height] }: Site, path: string): void {
  const beyond = list.findIndex(([x, y]) => Math.abs(x) > width / 2 + ROUNDING || Math.abs(y) > height / 2 + ROUNDING);
  if (beyond < 0) return;
  const [x, y] = list[beyond];
  throw new Fault(
    'OUTSIDE',
    `Probe ${beyond + 1} of site ${name} at [${x}, ${y}] from its centre lies outside the probe field of ${width} x ${height} mm. Enlarge the field, or correct the probe.`,
    `${path}.${beyond}`,
    { value: [x, y], expected: `within ${width / 2} and ${height / 2} either way` },
  );
}

function requireSingle(list: Positions, path: string): void {
  const seen = new Map<string, number>();
  list.forEach(([x, y], i) => {
    const place = `${x} ${y}`;
    const first = seen.get(place);
    if (first !== undefined)
      throw new Fault(
        'OVERLAP',
        `Probes ${first + 1} and ${i + 1} of ${path} are both at [${x}, ${y}]. Remove one.`,
        `${path}.${i}`,
        { value: [x, y] },
      );
    seen.set(place, i);
  });
}
