import { siteName } from '../layout/sites.ts';
import { evenSpacing, type Lattice, latticeOf, linesOf } from './lattice.ts';
import type { ListedRow } from './points-list.ts';
import { extentsOf, tidy } from './reading.ts';

type XY = readonly [number, number];

/** A probe from the centre of its site, mm, with its force in N where it has one. */
export type ListedProbe = readonly [x: number, y: number, force: number | null];

/** One site of a list. */
export interface ListedSite {
  /** As heads name it: letter of the row, number of the column. */
  readonly name: string;
  /** As the list names it. */
  readonly label: string | null;
  /** Middle of the box around its probes, mm. */
  readonly centre: XY;
  /** Box around its probes with half a pitch all round, mm. */
  readonly field: XY;
  /** Row by row from the far side. */
  readonly probes: readonly ListedProbe[];
  /** The regular array of its probes, or null. */
  readonly lattice: Lattice | null;
}

/** The pattern of the sites. */
export interface SiteGrid {
  readonly columns: number;
  readonly rows: number;
  /** Site to site, mm; null where sites stand unevenly. */
  readonly pitch: XY | null;
  /** Centre of the pattern, mm. */
  readonly origin: XY;
  /** Whether all sites have the same probes. */
  readonly alike: boolean;
}

/** Centres this near, mm, are of one row or column; positions this near are the same. */
const NEAR = 2e-3;
/** Field of a single probe, mm. */
const ALONE = 1;

interface Named {
  readonly grid: SiteGrid;
  readonly sites: readonly ListedSite[];
  readonly guesses: readonly string[];
}

/** Sites in order with their names, and what pattern they and their probes make. */
export function siteGrid(groups: readonly { label: string | null; rows: readonly ListedRow[] }[]): Named {
  const loose = groups.map(({ label, rows }) => ({ label, ...placed(rows) }));
  const xs = linesOf(loose.map(({ centre }) => centre[0]));
  const ys = linesOf(loose.map(({ centre }) => centre[1]));
  const line = (lines: readonly number[], value: number) => lines.findIndex((at) => Math.abs(at - value) <= NEAR);
  const cell = ({ centre: [x, y] }: { readonly centre: XY }) => (ys.length - 1 - line(ys, y)) * xs.length + line(xs, x);
  const isGrid = xs.length * ys.length === loose.length && new Set(loose.map(cell)).size === loose.length;
  const order = [...loose].sort(
    isGrid ? (a, b) => cell(a) - cell(b) : (a, b) => a.centre[0] - b.centre[0] || b.centre[1] - a.centre[1],
  );
  const columns = isGrid ? xs.length : loose.length;
  const spacing = [evenSpacing(xs), evenSpacing(ys)];
  const even = isGrid && spacing[0] !== null && spacing[1] !== null;
  const pitch: XY | null = even ? [tidy(spacing[0]!), tidy(spacing[1]!)] : null;
  const sites = order.map((site, i) => ({ ...site, name: siteName(Math.floor(i / columns), i % columns) }));
  const difference = largestDifference(sites);
  const alike = difference <= NEAR;
  const [x0, x1, y0, y1] = [xs[0], xs[xs.length - 1], ys[0], ys[ys.length - 1]];
  return {
    grid: {
      columns,
      rows: isGrid ? ys.length : 1,
      pitch,
      origin: [tidy((x0 + x1) / 2), tidy((y0 + y1) / 2)],
      alike,
    },
    sites,
    guesses: [
      isGrid
        ? `Sites make ${columns} columns and ${ys.length} rows${pitch === null ? ', unevenly spaced' : columns * ys.length > 1 ? ` at a pitch of ${pitch[0]} x ${pitch[1]} mm` : ''}.`
        : `The ${columns} sites make no grid: they are numbered from left to right, and each has its own place.`,
      ...labelled(sites),
      alike
        ? `All sites have the same ${sites[0].probes.length} probes${difference > 1e-6 ? ` to ${(1000 * difference).toFixed(1)} um; those of ${sites[0].name} are taken` : ''}: ${described(sites[0])}.`
        : 'Sites differ in their probes: each has its own list.',
    ],
  };
}

function labelled(sites: readonly ListedSite[]): string[] {
  const renamed = sites.filter(({ label, name }) => label !== null && label !== name);
  if (renamed.length === 0) return [];
  return [
    `Sites are named by row and column: ${renamed
      .slice(0, 6)
      .map(({ label, name }) => `"${label}" is ${name}`)
      .join(', ')}${renamed.length > 6 ? ' and so on' : ''}.`,
  ];
}

function described({ lattice, field }: ListedSite): string {
  const over = `in a field of ${field[0]} x ${field[1]} mm`;
  if (lattice === null) return `no regular array, ${over}`;
  const { pattern, columns, rows, pitch } = lattice;
  const by = pattern === 'square' ? `${tidy(pitch[0])}` : `${tidy(pitch[0])} x ${Number(pitch[1].toFixed(4))}`;
  return `a ${pattern} array of ${columns} x ${rows} at ${by} mm, ${over}`;
}

/** Probes about the middle of their box. */
function placed(rows: readonly ListedRow[]): Omit<ListedSite, 'name' | 'label'> {
  const box = extentsOf(rows.map(({ numbers: { x, y } }) => [x, y] as const))!;
  const centre: XY = [tidy((box.min[0] + box.max[0]) / 2), tidy((box.min[1] + box.max[1]) / 2)];
  const probes = rows
    .map(({ numbers: { x, y, force = null } }): ListedProbe => [tidy(x - centre[0]), tidy(y - centre[1]), force])
    .sort(([xa, ya], [xb, yb]) => (Math.abs(ya - yb) > NEAR ? yb - ya : xa - xb));
  const lattice = latticeOf(probes.map(([x, y]) => [x, y] as const));
  const margin = lattice?.pitch ?? sparsePitch(box.max[0] - box.min[0], box.max[1] - box.min[1], rows.length);
  const field: XY = [tidy(box.max[0] - box.min[0] + margin[0]), tidy(box.max[1] - box.min[1] + margin[1])];
  return { centre, field, probes, lattice };
}

/** Mean distance of n points spread over a box. */
function sparsePitch(width: number, height: number, n: number): XY {
  if (n === 1) return [ALONE, ALONE];
  const pitch = width * height > 0 ? Math.sqrt((width * height) / n) : Math.max(width, height) / (n - 1);
  return [pitch, pitch];
}

/** Largest difference of place or, infinite, of count or force, between the sites. */
function largestDifference([first, ...others]: readonly ListedSite[]): number {
  let most = 0;
  for (const { probes } of others) {
    if (probes.length !== first.probes.length) return Infinity;
    for (let i = 0; i < probes.length; i++) {
      const [[xa, ya, fa], [xb, yb, fb]] = [first.probes[i], probes[i]];
      if (fa !== fb && !(fa !== null && fb !== null && Math.abs(fa - fb) <= 1e-9 * Math.max(fa, fb))) return Infinity;
      most = Math.max(most, Math.abs(xa - xb), Math.abs(ya - yb));
    }
  }
  return most;
}
