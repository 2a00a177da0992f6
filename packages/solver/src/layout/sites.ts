import { Fault } from '../fault/fault.ts';
import type { Point } from '../geometry/point.ts';
import type { Site } from './site.ts';

/** What the places of sites follow from; see the head model. */
export interface SitePattern {
  readonly columns: number;
  readonly rows: number;
  readonly die?: Point | undefined;
  readonly skip?: Point | undefined;
  readonly pitch?: Point | undefined;
  readonly origin?: Point | undefined;
  readonly probes: { readonly field: Point };
  /** What single sites have of their own, by name. */
  readonly own?: Readonly<Record<string, OwnPlace>> | undefined;
}

interface OwnPlace {
  readonly at?: Point | undefined;
  readonly field?: Point | undefined;
}

/** Fields that overlap by less than this share of their extent count as touching. */
const SAME = 1e-9;

/**
 * Sites of a pattern, row by row from the far (+y) side, each row along +x; where a site has a place or a field of its
 * own, it stands there instead.
 *
 * @throws Fault SCHEMA when the pitch is given twice or not at all; OVERLAP when probe fields overlap
 */
export function siteLayout(pattern: SitePattern): Site[] {
  const { columns, rows, origin = [0, 0], probes, own } = pattern;
  const pitch = sitePitch(pattern);
  if (own === undefined) requireRoom(pattern, pitch);
  const sites = Array.from({ length: rows * columns }, (_, i) => {
    const row = Math.floor(i / columns);
    const column = i % columns;
    const name = siteName(row, column);
    const { at, field = probes.field } = own !== undefined && Object.hasOwn(own, name) ? own[name] : {};
    const centre = at ?? [
      origin[0] + (column - (columns - 1) / 2) * pitch[0],
      origin[1] + ((rows - 1) / 2 - row) * pitch[1],
    ];
    return { name, row, column, centre, field };
  });
  if (own !== undefined) requireApart(sites);
  return sites;
}

/** Site to site along x and y, mm: given, or die times one more than the dies skipped between. */
export function sitePitch({ die, skip, pitch }: SitePattern): Point {
  if (pitch !== undefined) {
    if (die === undefined && skip === undefined) return pitch;
    const extra = die === undefined ? 'skip' : 'die';
    throw new Fault(
      'SCHEMA',
      `sites has both "pitch" and "${extra}". Give "pitch" alone, or "die" with "skip".`,
      'sites.pitch',
      {
        value: pitch,
        expected: '"pitch" or "die" with "skip"',
      },
    );
  }
  if (die !== undefined && skip !== undefined) return [die[0] * (skip[0] + 1), die[1] * (skip[1] + 1)];
  const missing = die === undefined ? (skip === undefined ? 'pitch' : 'die') : 'skip';
  const remedy =
    missing === 'pitch'
      ? 'Give "pitch": [x, y] in mm, or "die": [x, y] in mm with "skip": [x, y] dies left out between sites.'
      : missing === 'die'
        ? 'Add "die": [x, y] in mm.'
        : 'Add "skip": [x, y], the dies left out between sites; [0, 0] where sites are neighbours.';
  throw new Fault('SCHEMA', `sites does not say how far apart sites are. ${remedy}`, `sites.${missing}`, {
    expected: '"pitch" or "die" with "skip"',
  });
}

/** Letter of the row and number of the column: A1, B3, AA7. */
export function siteName(row: number, column: number): string {
  const letters = row < 26 ? '' : String.fromCharCode(64 + Math.floor(row / 26));
  return `${letters}${String.fromCharCode(65 + (row % 26))}${column + 1}`;
}

/** Length of a row of n sites with `skip` dies left out between them: `((n - 1)(skip + 1) + 1) die`. */
export function rowLength(n: number, skip: number, die: number): number {
  return ((n - 1) * (skip + 1) + 1) * die;
}

/** In a grid neighbours overlap first. Columns that overlap are no matter where there is only one. */
function requireRoom({ columns, rows, probes: { field } }: SitePattern, pitch: Point): void {
  for (const axis of [0, 1] as const) {
    const count = axis === 0 ? columns : rows;
    if (count < 2 || pitch[axis] >= field[axis] * (1 - SAME)) continue;
    const other = axis === 0 ? siteName(0, 1) : siteName(1, 0);
    throw new Fault(
      'OVERLAP',
      `The probe fields of sites A1 and ${other} overlap: they are ${field[axis]} mm ${axis === 0 ? 'wide' : 'high'} and ${pitch[axis]} mm apart along ${'xy'[axis]}. Make the field smaller, or skip more dies.`,
      `sites.probes.field.${axis}`,
      { sites: ['A1', other], value: field[axis], expected: `at most ${pitch[axis]}` },
    );
  }
}

/** Sites with places of their own: those that may overlap along x are compared, from left to right. */
function requireApart(sites: readonly Site[]): void {
  const edge = ({ centre, field }: Site, axis: 0 | 1, side: -1 | 1) => centre[axis] + (side * field[axis]) / 2;
  const order = [...sites].sort((a, b) => edge(a, 0, -1) - edge(b, 0, -1));
  order.forEach((site, i) => {
    for (let j = i + 1; j < order.length; j++) {
      const other = order[j];
      const meet = (axis: 0 | 1) =>
        edge(site, axis, 1) - edge(other, axis, -1) > SAME * site.field[axis] &&
        edge(other, axis, 1) - edge(site, axis, -1) > SAME * site.field[axis];
      if (!meet(0)) break;
      if (!meet(1)) continue;
      const [first, second] = [site.name, other.name].sort();
      throw new Fault(
        'OVERLAP',
        `The probe fields of sites ${first} and ${second} overlap: they lie at [${site.centre}] and [${other.centre}] mm. Move one in sites.own, or make its field smaller.`,
        'sites.own',
        { sites: [first, second] },
      );
    }
  });
}
