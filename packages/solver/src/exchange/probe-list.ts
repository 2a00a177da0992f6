import { Fault } from '../fault/fault.ts';
import type { FileContent } from './file-text.ts';
import { type ListedSite, type SiteGrid, siteGrid } from './listed-sites.ts';
import { type ListedRow, type ListOptions, readList } from './points-list.ts';
import { PROBE_COLUMNS } from './probe-columns.ts';
import { probeGroups } from './probe-groups.ts';
import { type Dropped, extentsOf, type Reading } from './reading.ts';

/** Probes of a head by site, and the pattern that they make. */
export interface ProbeList extends SiteGrid {
  /** Row by row from the far side where they make a grid, else from left to right. */
  readonly sites: readonly ListedSite[];
  /** Whether each probe came with a force. */
  readonly forced: boolean;
}

export interface ProbeListOptions extends ListOptions {
  /** Probes further apart than this, mm, are of different sites, where no column says so. */
  readonly gap?: number | undefined;
}

/** Probes this near, mm, are one listed twice. */
const SAME = 1e-6;
/** Coordinates beyond this, mm, are of another origin or unit. */
const FARTHEST = 1e5;

/**
 * Probe list as CSV text or workbook: any order of columns, mm, um, mil or inch, decimal point or comma; probes are grouped into sites
 * by a column that names them, or by the gaps between them.
 *
 * @throws Fault UNREADABLE, USAGE or TOO_LARGE when there is nothing to take
 */
export function readProbeList(content: FileContent, options: ProbeListOptions = {}): Reading<ProbeList> {
  const list = readList(content, PROBE_COLUMNS, ['x', 'y'], options, 'probe list');
  const dropped: Dropped[] = [...list.dropped];
  const rows = list.rows.filter((row) => {
    const reason = flawOf(row);
    if (reason !== null) dropped.push({ line: row.line, reason });
    return reason === null;
  });
  const single = withoutTwins(rows, dropped);
  if (single.length === 0)
    throw new Fault(
      'UNREADABLE',
      `The probe list holds no probe that can be read${dropped.length === 0 ? '' : `: on line ${dropped[0].line} ${dropped[0].reason}`}. It needs a line for each probe with x and y.`,
      '',
      { line: dropped[0]?.line ?? 1, dropped: dropped.slice(0, 50) },
    );
  const forces = single.filter(({ numbers }) => numbers.force !== undefined).length;
  const forced = forces === single.length;
  const { groups, sentence } = probeGroups(single, options.gap);
  const grid = siteGrid(groups);
  return {
    read: { ...grid.grid, sites: grid.sites, forced },
    preview: {
      counts: { probes: single.length, sites: grid.sites.length, dropped: dropped.length },
      extents: extentsOf(single.map(({ numbers: { x, y } }) => [x, y] as const)),
      layers: [],
      units: list.units,
      guesses: [
        ...list.guesses,
        sentence,
        ...grid.guesses,
        ...(forces > 0 && !forced ? [`${single.length - forces} probes have no force of their own.`] : []),
      ],
      dropped: dropped.sort((a, b) => a.line - b.line),
    },
  };
}

function flawOf({ numbers: { x, y, force } }: ListedRow): string | null {
  if (Math.max(Math.abs(x), Math.abs(y)) > FARTHEST)
    return `(${x}, ${y}) mm lies beyond ${FARTHEST} mm from the origin; check the unit, or shift the list`;
  if (force !== undefined && force < 0) return `force is ${force} N; a preload is not negative`;
  if (force !== undefined && force > 100)
    return `force is ${force} N, more than the 100 N of any probe; check its unit`;
  return null;
}

function withoutTwins(rows: readonly ListedRow[], dropped: Dropped[]): ListedRow[] {
  const seen = new Map<string, number>();
  return rows.filter(({ line, numbers: { x, y } }) => {
    const place = `${Math.round(x / SAME)} ${Math.round(y / SAME)}`;
    const first = seen.get(place);
    if (first === undefined) seen.set(place, line);
    else dropped.push({ line, reason: `the probe at (${x}, ${y}) mm is on line ${first} already` });
    return first === undefined;
  });
}
