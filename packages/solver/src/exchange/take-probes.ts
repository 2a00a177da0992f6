import { Fault } from '../fault/fault.ts';
import { sitePitch } from '../layout/sites.ts';
import type { HeadModel, Sites } from '../model/head-model.ts';
import { latticeOf } from './lattice.ts';
import type { ListedSite } from './listed-sites.ts';
import type { ProbeList } from './probe-list.ts';
import { type Taken, tidy } from './reading.ts';

type Positions = NonNullable<Sites['probes']['positions']>;

/** Pitches this near, mm, are the same. */
const SAME = 1e-6;

/**
 * Head with the sites and probes of a list: `points` keeps every probe as a point load, `field` spreads those of a site
 * evenly over its field. Preloads are those of the list where it has them; all else of the probes stays.
 *
 * @throws Fault SCHEMA when a list can't be had as fields
 */
export function takeProbes(model: HeadModel, list: ProbeList, as: 'points' | 'field'): Taken<HeadModel> {
  const { sites: listed, columns, rows, origin, alike, forced } = list;
  const counts = new Set(listed.map(({ probes }) => probes.length));
  if (as === 'field' && counts.size > 1)
    throw new Fault(
      'SCHEMA',
      `The sites have ${Math.min(...counts)} to ${Math.max(...counts)} probes, but fields are alike in all sites. Take the list as points.`,
      'sites.probes.count',
      { value: [...counts], expected: 'as many probes in each site' },
    );
  const { positions: _positions, holes, ...kept } = model.sites.probes;
  const preload = forced ? tidy(meanForce(listed)) : kept.preload;
  const field = alike || as === 'field' ? narrowed(largestField(listed), list) : largestField(listed);
  const { lattice } = listed[0];
  const drilled =
    holes === undefined
      ? {}
      : {
          holes:
            alike && lattice !== null && lattice.pattern !== 'rectangular'
              ? { ...holes, pitch: tidy(lattice.pitch[0]), pattern: lattice.pattern }
              : holes,
        };
  const own = ownOf(list, as, preload, field);
  const { die, skip, pitch, own: _own, ...site } = model.sites;
  const spacing = spacingOf({ die, skip, pitch }, list, field);
  const taken: HeadModel = {
    ...model,
    sites: {
      ...site,
      ...spacing,
      columns,
      rows,
      origin: [origin[0], origin[1]],
      probes: {
        ...kept,
        count: listed[0].probes.length,
        field,
        preload,
        ...(as === 'points' && alike ? { positions: positionsOf(listed[0], preload) } : {}),
        ...drilled,
      },
      ...(own === null ? {} : { own }),
    },
  };
  return { model: taken, notes: notesOn(model, taken, list) };
}

function meanForce(sites: readonly ListedSite[]): number {
  const forces = sites.flatMap(({ probes }) => probes.map(([, , force]) => force!));
  return forces.reduce((sum, force) => sum + force, 0) / forces.length;
}

function positionsOf({ probes }: ListedSite, preload: number): Positions {
  return probes.map(([x, y, force]) => (force === null || Math.abs(force - preload) <= 1e-9 ? [x, y] : [x, y, force]));
}

function largestField(sites: readonly ListedSite[]): [number, number] {
  return [Math.max(...sites.map(({ field }) => field[0])), Math.max(...sites.map(({ field }) => field[1]))];
}

/** Fields may touch, not overlap. */
function narrowed([width, height]: [number, number], { pitch, columns, rows }: ProbeList): [number, number] {
  if (pitch === null) return [width, height];
  return [columns > 1 ? Math.min(width, pitch[0]) : width, rows > 1 ? Math.min(height, pitch[1]) : height];
}

/** Die and skipped dies stay where they give the pitch of the list. */
function spacingOf(
  { die, skip, pitch }: Pick<Sites, 'die' | 'skip' | 'pitch'>,
  { pitch: found, columns, rows }: ProbeList,
  field: readonly [number, number],
): Pick<Sites, 'die' | 'skip' | 'pitch'> {
  const before =
    pitch !== undefined || (die !== undefined && skip !== undefined)
      ? sitePitch({ die, skip, pitch, columns, rows, probes: { field } })
      : null;
  const along = (axis: 0 | 1): number => {
    const spacing = found?.[axis] ?? 0;
    if (spacing > 0) return spacing;
    return Math.max(field[axis], before?.[axis] ?? 0);
  };
  const wanted: [number, number] = [along(0), along(1)];
  const same = before !== null && [0, 1].every((axis) => Math.abs(before[axis] - wanted[axis]) <= SAME);
  if (same && die !== undefined && skip !== undefined) return { die, skip };
  return { pitch: wanted };
}

function ownOf(list: ProbeList, as: 'points' | 'field', preload: number, field: readonly [number, number]) {
  const { sites, pitch, alike } = list;
  if (pitch !== null && (alike || as === 'field')) return null;
  return Object.fromEntries(
    sites.map((site): [string, NonNullable<Sites['own']>[string]] => {
      const place = pitch === null ? { at: [site.centre[0], site.centre[1]] as [number, number] } : {};
      if (alike || as === 'field') return [site.name, place];
      const size = site.field[0] === field[0] && site.field[1] === field[1];
      const box: [number, number] = [site.field[0], site.field[1]];
      return [site.name, { ...place, ...(size ? {} : { field: box }), positions: positionsOf(site, preload) }];
    }),
  );
}

function notesOn(before: HeadModel, { sites, cases }: HeadModel, { sites: listed, alike }: ProbeList): string[] {
  const names = new Set(listed.map(({ name }) => name));
  const lost = cases.filter(({ touched }) => Array.isArray(touched) && touched.some((name) => !names.has(name)));
  const { holes } = before.sites.probes;
  const regular = alike && latticeOf(listed[0].probes.map(([x, y]) => [x, y] as const)) !== null;
  return [
    ...lost.map(({ name }) => `Case "${name}" touches sites that the list does not have. Correct it.`),
    ...(holes === undefined && regular ? ['Fields are solid: give "holes" if they are drilled through the body.'] : []),
    ...(holes !== undefined && !regular
      ? ['The probes make no regular array; the pattern and pitch of "holes" are left as they were. Check them.']
      : []),
    ...(sites.probes.preload === 0 ? ['The preload is 0 N: nothing presses on the head.'] : []),
  ];
}
