import { distanceToRing } from '../geometry/inside.ts';
import type { Site } from '../layout/site.ts';
import type { HeadPlan } from '../model/compile.ts';
import type { Frame, HeadModel, Rib } from '../model/head-model.ts';
import { headDiameter } from '../model/keep-outs.ts';
import { siteBox } from './inward-moves.ts';

/** A change of body or frame, from the least of it to the most that is tried. */
export interface StifferSeries {
  readonly kind: 'ribs' | 'thickness' | 'frame';
  readonly steps: readonly StifferStep[];
}

export interface StifferStep {
  /** What is done, as the beginning of a sentence: `a body 1 mm thicker (5.5 mm)`. */
  readonly what: string;
  /** mm: width of ribs, or what becomes thicker. */
  readonly by: number;
  apply(model: HeadModel): HeadModel;
}

/** What becomes thicker at most, mm, and in what steps. */
const THICKER = [0.5, 1, 1.5, 2];
/** More than this share of its thickness is another design. */
const MOST_SHARE = 0.6;
/** Width of a rib over the gap between probe fields; it leaves room for the guides of the probes. Common practice, no source. */
const RIB_SHARE = 0.6;
/** Narrower ribs are not made, mm. Common practice, no source. */
const LEAST_RIB = 0.8;
/** Of a frame where there is none: free width around the sites, least width of its rim, and thickness, mm. */
const FREE = 3;
const LEAST_RIM = 4;
const FRAME = { material: 'stainless-17-4', thickness: 4 };

/** What may stiffen the parts of a head. */
export function stifferHeads(model: HeadModel, plan: HeadPlan): StifferSeries[] {
  const { body, frame } = model;
  return [
    ...(frame === undefined ? newFrame(model, plan) : ribSeries(frame, plan.sites)),
    {
      kind: 'thickness',
      steps: thicker(body.thickness).map((by) => ({
        what: `a body ${by} mm thicker (${sum(body.thickness, by)} mm)`,
        by,
        apply: (head) => ({ ...head, body: { ...head.body, thickness: sum(body.thickness, by) } }),
      })),
    },
    ...(frame === undefined ? [] : [thickerFrame(frame)]),
  ];
}

/** Screw heads lie on one face: none, that did not before, reaches over an edge of body, frame or rib. */
export function headsLieFlat({ fasteners }: HeadModel, before: HeadPlan, after: HeadPlan): boolean {
  const gap = ({ parts }: HeadPlan, [x, y]: readonly [number, number]): number =>
    Math.min(
      ...[...parts.body, ...parts.frameParts.flatMap(({ region }) => region)].map((ring) => distanceToRing(ring, x, y)),
    );
  return fasteners.every((fastener) => {
    const room = Math.min(headDiameter(fastener) / 2, gap(before, fastener.at));
    return gap(after, fastener.at) >= room - 1e-9;
  });
}

function ribSeries(frame: Frame, sites: readonly Site[]): StifferSeries[] {
  const [columns, rows] = (['columns', 'rows'] as const).map((between) => ribsBetween(frame, sites, between));
  const both: StifferStep | null = columns &&
    rows && {
      what: `${columns.what} and ${rows.what}`,
      by: columns.by,
      apply: (head) => rows.apply(columns.apply(head)),
    };
  return [columns, rows, both]
    .filter((step) => step !== null)
    .map((step) => ({ kind: 'ribs', steps: [{ ...step, what: `${step.what} (as thick as the frame)` }] }));
}

/** Ribs in the gaps that have none; `null` where all have, or have no room. */
function ribsBetween(frame: Frame, sites: readonly Site[], between: 'columns' | 'rows'): StifferStep | null {
  const gaps = gapsOf(sites, between === 'columns' ? 0 : 1);
  const open = gaps.map((_, i) => i + 1).filter((gap) => !(frame.ribs ?? []).some((rib) => fills(rib, between, gap)));
  const room = Math.min(...open.map((gap) => gaps[gap - 1]));
  const width = Math.floor(RIB_SHARE * 10 * room + 1e-9) / 10;
  if (open.length === 0 || width < LEAST_RIB) return null;
  const skip = gaps.map((_, i) => i + 1).filter((gap) => !open.includes(gap));
  const rib = { between, width, ...(skip.length === 0 ? {} : { skip }) };
  const where =
    skip.length > 0 ? `the ${between} that have none` : gaps.length === 1 ? `the two ${between}` : `the ${between}`;
  return {
    what: `${open.length === 1 ? 'a rib' : 'ribs'} ${width} mm wide between ${where}`,
    by: width,
    apply: (head) =>
      head.frame === undefined ? head : { ...head, frame: { ...head.frame, ribs: [...(head.frame.ribs ?? []), rib] } },
  };
}

function fills(rib: Rib, between: 'columns' | 'rows', gap: number): boolean {
  return 'between' in rib && rib.between === between && !(rib.skip ?? []).includes(gap);
}

/** Free widths between the probe fields of neighbouring columns or rows, mm, in the order in which the model counts them. */
function gapsOf(sites: readonly Site[], axis: 0 | 1): number[] {
  const lines = new Map<number, [low: number, high: number]>();
  for (const { row, column, centre, field } of sites) {
    const line = axis === 0 ? column : row;
    const [low, high] = lines.get(line) ?? [Infinity, -Infinity];
    lines.set(line, [Math.min(low, centre[axis] - field[axis] / 2), Math.max(high, centre[axis] + field[axis] / 2)]);
  }
  const sorted = [...lines.values()].sort((a, b) => a[0] - b[0]);
  const gaps = sorted.slice(1).map(([low], i) => low - sorted[i][1]);
  return axis === 0 ? gaps : gaps.reverse();
}

/** A frame on the board side, as wide as the body, around the sites. */
function newFrame({ body: { outline } }: HeadModel, plan: HeadPlan): StifferSeries[] {
  if (!('rectangle' in outline)) return [];
  const [low, high] = siteBox(plan);
  const [cx, cy] = outline.centre ?? [0, 0];
  const size = (axis: 0 | 1): number =>
    Math.ceil(2 * (2 * Math.max(high[axis] - [cx, cy][axis], [cx, cy][axis] - low[axis]) + 2 * FREE)) / 2;
  const window = [size(0), size(1)] as [number, number];
  if (window.some((width, axis) => width > outline.rectangle[axis] - 2 * LEAST_RIM)) return [];
  const frame: Frame = {
    outer: outline,
    window: { rectangle: window, centre: [cx, cy], corner: 1 },
    ...FRAME,
    side: 'board',
    join: 'sliding',
  };
  return [
    {
      kind: 'frame',
      steps: [
        {
          what: `a frame of 17-4PH steel, ${FRAME.thickness} mm thick, around the sites`,
          by: FRAME.thickness,
          apply: (head) => ({ ...head, frame }),
        },
      ],
    },
  ];
}

function thickerFrame(frame: Frame): StifferSeries {
  const ribbed = (frame.ribs ?? []).length > 0;
  return {
    kind: 'frame',
    steps: thicker(frame.thickness).map((by) => ({
      what: `a frame ${by} mm thicker${ribbed ? ' with its ribs' : ''} (${sum(frame.thickness, by)} mm)`,
      by,
      apply: (head) => (head.frame === undefined ? head : { ...head, frame: thickened(head.frame, by) }),
    })),
  };
}

function thickened(frame: Frame, by: number): Frame {
  const ribs = frame.ribs?.map((rib) =>
    rib.thickness === undefined ? rib : { ...rib, thickness: sum(rib.thickness, by) },
  );
  return { ...frame, thickness: sum(frame.thickness, by), ...(ribs === undefined ? {} : { ribs }) };
}

function thicker(thickness: number): number[] {
  return THICKER.filter((by) => by === THICKER[0] || by <= MOST_SHARE * thickness);
}

function sum(a: number, b: number): number {
  return Math.round((a + b) * 1e6) / 1e6;
}
