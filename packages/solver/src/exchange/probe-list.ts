import { Fault } from '../fault/fault.ts';
import { clusters, FEWEST } from './cluster.ts';
import type { Wanted } from './column.ts';
import type { FileContent } from './file-text.ts';
import { type ListedSite, type SiteGrid, siteGrid } from './listed-sites.ts';
import { type ListedRow, type ListOptions, readList } from './points-list.ts';
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

/** Titles of a coordinate; # stands for its letter. */
const COORDINATE = [
  '#',
  'pos#',
  '#pos',
  'position#',
  '#position',
  '#coord',
  'coord#',
  '#coordinate',
  '#loc',
  'center#',
  'centre#',
  '#center',
  '#centre',
  'mid#',
  '#nom',
  '#nominal',
  'nom#',
  'nominal#',
  'probe#',
  'probepos#',
  'pin#',
  'tip#',
  'location#',
  '#location',
  '#koordinate',
  'koordinate#',
];
const FORCE = [
  'preload',
  'force',
  'load',
  'f',
  'probeforce',
  'springforce',
  'boardforce',
  'preloadforce',
  'kraft',
  'vorspannung',
];
const SITE = ['site', 'sitename', 'siteid', 'siteno', 'dut', 'die', 'device', 'group', 'block'];

/** The column of a coordinate. */
export function coordinate(axis: 'x' | 'y'): Wanted {
  return { key: axis, names: COORDINATE.map((name) => name.replace('#', axis)), quantity: 'length', required: true };
}

const WANTED: readonly Wanted[] = [
  coordinate('x'),
  coordinate('y'),
  { key: 'force', names: FORCE, quantity: 'force', required: false },
  { key: 'site', names: SITE, quantity: null, required: false },
];

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
  const list = readList(content, WANTED, ['x', 'y'], options, 'probe list');
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
  const { groups, sentence } = grouped(single, options.gap);
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

/** Rows by site. */
function grouped(
  rows: readonly ListedRow[],
  gap: number | undefined,
): { readonly groups: readonly { label: string | null; rows: readonly ListedRow[] }[]; readonly sentence: string } {
  const nameless = rows.filter(({ words: { site = '' } }) => site === '');
  const named = nameless.length === 0;
  const why =
    nameless.length === 0 || nameless.length === rows.length
      ? ''
      : ` The names of sites are not heeded: ${nameless.length} rows have none, such as line ${nameless[0].line}.`;
  if (named && gap === undefined) {
    const groups = bySite(rows);
    return {
      groups: [...groups].map(([label, members]) => ({ label, rows: members })),
      sentence: `Probes belong to the ${groups.size} sites that their rows name.`,
    };
  }
  const {
    group,
    count,
    gap: cut,
    passed,
  } = clusters(
    rows.map(({ numbers: { x, y } }) => [x, y] as const),
    gap,
  );
  const groups = Array.from({ length: count }, (): ListedRow[] => []);
  rows.forEach((row, i) => {
    groups[group[i]].push(row);
  });
  return {
    groups: groups.map((members) => ({ label: null, rows: members })),
    sentence: `${
      cut === null
        ? passed === null
          ? 'No gap parts the probes: they are one site.'
          : `The probes are taken as one site: the gap of ${Number(passed.toPrecision(3))} mm would leave fewer than ${FEWEST} on one side. Say how wide a gap parts sites if that is wrong.`
        : `Probes more than ${Number(cut.toPrecision(3))} mm apart belong to different sites: ${count} of them.`
    }${why}`,
  };
}

function bySite(rows: readonly ListedRow[]): Map<string, ListedRow[]> {
  const groups = new Map<string, ListedRow[]>();
  for (const row of rows) {
    const members = groups.get(row.words.site);
    if (members === undefined) groups.set(row.words.site, [row]);
    else members.push(row);
  }
  return groups;
}
