import { z } from 'zod';
import { Fault } from '../fault/fault.ts';
import { siteLayout, sitePitch } from '../layout/sites.ts';
import { checkSchema } from '../plate/check-schema.ts';
import { thicknessSchema } from '../section/section.ts';
import { placedFasteners } from './draft-fasteners.ts';
import type { Frame, HeadModel, Rib, Sites } from './head-model.ts';
import { label, positive } from './ranges.ts';
import { checkHeadModel } from './read.ts';
import { findScrew } from './screws.ts';

const whole = (max: number) => z.number().int().min(1).max(max);

/** The few answers that a head can be drafted from. Lengths mm, forces N. */
export const headDraftSchema = z.strictObject({
  name: label,
  columns: whole(16).describe('sites along x'),
  rows: whole(16).describe('sites along y'),
  die: z.tuple([positive(100), positive(100)]).describe('[along x, along y] with scribe line, mm'),
  skip: z
    .tuple([z.number().int().min(0).max(20), z.number().int().min(0).max(20)])
    .describe('dies left out between neighbouring sites [along x, along y]'),
  probes: z.strictObject({
    count: whole(20000).describe('probes in each site'),
    pitch: z.number().min(0.02).max(10).describe('hole to hole in the probe field, mm'),
    preload: z.number().min(0).max(100).describe('force of one probe on the mounted head, N'),
    touchdown: z.number().min(0).max(100).optional().describe('force of one probe on the wafer, N'),
    rate: z.number().min(1e-4).max(1e4).optional().describe('spring rate of one probe, N/mm'),
  }),
  body: z.strictObject({ material: label, thickness: thicknessSchema }),
  frame: z
    .strictObject({ material: label, thickness: thicknessSchema, ribs: z.enum(['none', 'columns', 'rows', 'both']) })
    .optional()
    .describe('stiffening frame around the sites; none if left out'),
  fasteners: z.union([z.literal(4), z.literal(6), z.literal(8)]).describe('screws to the board'),
  screw: label.describe('size, such as M2.5'),
  bow: positive(10).describe('largest bow of the site area, mm'),
});

export type HeadDraft = z.infer<typeof headDraftSchema>;

/** Free width around the probe fields before the frame begins, mm. */
const ROOM = 3;
/** Width on which body and frame lie on each other, mm. */
const LAP = 6;
/** Rim of a body without a frame beyond the fasteners, and of the frame beyond its screw heads, mm. */
const RIM = 1.5;
/** Hole over pitch in a drafted field. */
const BORE = 0.6;
/** Width of a rib over the gap between probe fields. */
const RIB_SHARE = 0.6;

/**
 * A whole head from a few answers: fields follow from the probes, body and frame from the sites, fasteners from the frame.
 * A place to start from, not a design: it can be solved, and everything in it can be edited.
 *
 * From the sites outwards: room, lap of body and frame, screw heads with a rim, on half millimetres.
 *
 * @throws Fault SCHEMA or OUT_OF_RANGE for an answer out of range or a touchdown below the preload; OVERLAP where the probes do not fit between the sites
 */
export function draftHead(answers: unknown): HeadModel {
  const draft = checkSchema(headDraftSchema, answers, 'draft of a head');
  const sites = draftSites(draft);
  const [width, height] = siteArea(sites);
  const head = findScrew(draft.screw, 'screw').head;
  const seat = head + 2 * RIM;
  const grown = (by: number): [number, number] => [halves(width + 2 * by), halves(height + 2 * by)];
  const framed = draft.frame !== undefined;
  const body = grown(ROOM + (framed ? LAP : seat));
  const outer = framed ? grown(ROOM + LAP + seat) : body;
  const frame = draftFrame(draft, sites, grown(ROOM), outer);
  return checkHeadModel({
    flathead: 1,
    name: draft.name,
    body: { outline: { rectangle: body, corner: 2 }, ...pick(draft.body) },
    sites,
    ...(frame === undefined ? {} : { frame }),
    fasteners: placedFasteners(
      draft.fasteners,
      [tenths((outer[0] - seat) / 2), tenths((outer[1] - seat) / 2)],
      draft.screw,
    ),
    cases: [
      { name: 'mounted' },
      ...(draft.probes.touchdown === undefined ? [] : [{ name: 'all touched', touched: 'all' }]),
    ],
    limits: { bow: draft.bow },
  });
}

function pick({ material, thickness }: HeadDraft['body']) {
  return { material, thickness };
}

function draftSites({ columns, rows, die, skip, probes }: HeadDraft): Sites {
  const { count, pitch, preload, touchdown, rate } = probes;
  if (touchdown !== undefined && touchdown < preload)
    throw new Fault(
      'OUT_OF_RANGE',
      `The force at touchdown of ${touchdown} N is less than the preload of ${preload} N, which a touched probe keeps. Raise it, or lower the preload.`,
      'probes.touchdown',
      { value: touchdown, expected: `at least ${preload}` },
    );
  const diameter = Math.max(1e-3, Math.round(100 * BORE * pitch) / 100 || BORE * pitch);
  const array = probeArray(count, pitch, sitePitch({ columns, rows, die, skip, probes: { field: die } }));
  const sites: Sites = {
    columns,
    rows,
    die: [die[0], die[1]],
    skip: [skip[0], skip[1]],
    probes: {
      count,
      field: array,
      preload,
      ...(touchdown === undefined ? {} : { touchdown }),
      ...(rate === undefined ? {} : { rate }),
      holes: { pitch, diameter, pattern: 'square' },
    },
  };
  requireFit(sites, count, pitch);
  return sites;
}

/** Extent of a square array of so many holes, in the proportion of the site pitch as nearly as whole rows allow, mm. */
function probeArray(count: number, pitch: number, [px, py]: readonly [number, number]): [number, number] {
  const across = Math.max(1, Math.round(Math.sqrt((count * px) / py)));
  const down = Math.ceil(count / across);
  return [round(across * pitch), round(down * pitch)];
}

/** @throws Fault OVERLAP that says what to change */
function requireFit(sites: Sites, count: number, pitch: number): void {
  const { columns, rows, probes } = sites;
  const spacing = sitePitch(sites);
  for (const axis of [0, 1] as const) {
    if ((axis === 0 ? columns : rows) < 2 || probes.field[axis] <= spacing[axis]) continue;
    throw new Fault(
      'OVERLAP',
      `${count} probes at ${pitch} mm need ${probes.field[axis]} mm along ${'xy'[axis]}, but sites are only ${round(spacing[axis])} mm apart there. Skip more dies, or take fewer or closer probes.`,
      `skip.${axis}`,
      { value: probes.field[axis], expected: `at most ${round(spacing[axis])} mm` },
    );
  }
  siteLayout(sites);
}

function siteArea(sites: Sites): [number, number] {
  const [px, py] = sitePitch(sites);
  const [fx, fy] = sites.probes.field;
  return [(sites.columns - 1) * px + fx, (sites.rows - 1) * py + fy];
}

function draftFrame(
  { frame, columns, rows }: HeadDraft,
  sites: Sites,
  window: [number, number],
  outer: [number, number],
): Frame | undefined {
  if (frame === undefined) return undefined;
  const { material, thickness } = frame;
  const pitch = sitePitch(sites);
  const rib = (between: 'columns' | 'rows'): Rib[] => {
    const axis = between === 'columns' ? 0 : 1;
    const gap = pitch[axis] - sites.probes.field[axis];
    const several = (between === 'columns' ? columns : rows) > 1;
    const wanted = frame.ribs === between || frame.ribs === 'both';
    if (!wanted || !several) return [];
    const width = Math.floor(gap * RIB_SHARE * 10) / 10;
    if (width >= 0.1) return [{ between, width }];
    throw new Fault(
      'OVERLAP',
      `There is no room for ribs between ${between}: probe fields are ${round(gap)} mm apart. Skip more dies, or leave the ribs out.`,
      'frame.ribs',
      { value: gap, expected: 'more than 0.2 mm' },
    );
  };
  const ribs = [...rib('columns'), ...rib('rows')];
  return {
    outer: { rectangle: outer, corner: 3 },
    window: { rectangle: window, corner: 1 },
    material,
    thickness,
    side: 'board',
    join: 'sliding',
    ...(ribs.length > 0 ? { ribs } : {}),
  };
}

/** Up to the next half millimetre. */
function halves(value: number): number {
  return Math.ceil(value * 2 - 1e-9) / 2;
}

/** Down to the grid that fasteners keep to, mm. */
function tenths(value: number): number {
  return Math.floor(value * 10 + 1e-9) / 10;
}

function round(value: number): number {
  return Math.round(value * 1e4) / 1e4;
}
