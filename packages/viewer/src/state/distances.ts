import {
  distanceToRing,
  type HeadModel,
  insideRing,
  type Point,
  type Ring,
  type Site,
  siteLayout,
} from '@flathead/solver';
import { displayRing } from '../buffers/display-ring.ts';
import { siteRings } from '../buffers/plan-lines.ts';
import { ringGap } from '../buffers/ring-gap.ts';
import { screwSize } from '../buffers/screw-size.ts';
import { nearestSite } from './fastener-moves.ts';
import { indexOf } from './grips.ts';
import { nearestKeepOut } from './keep-out-gap.ts';
import { linkedSigns, type MirrorAxes, mirrored } from './mirror.ts';
import { pitchOf } from './pitch-edit.ts';
import { planOutlines } from './plan-outline.ts';
import { ribLines, ribRing } from './rib-lines.ts';

/** A distance of the dragged thing from what matters, in words. */
export interface Distance {
  readonly text: string;
  /** Less than it should be. */
  readonly short: boolean;
}

/** Things farther away than this are not worth a word, mm. */
const FAR = 25;
/** The same of the rim of the body for what stands on the frame, mm. */
const NEAR_RIM = 5;

/** Live distances of what a key names: to sites, edges, keep-outs, and its partner or next of its kind. */
export function distancesOf(model: HeadModel, key: string, axes: MirrorAxes | null): Distance[] {
  const index = indexOf(key);
  if (key.startsWith('fastener')) return ofFastener(model, index, axes);
  if (key.startsWith('rib')) return ofRib(model, index);
  if (key.startsWith('keepOut')) return ofKeepOut(model, index);
  return key === 'pitch' ? ofPitch(model) : [];
}

function ofFastener(model: HeadModel, index: number, axes: MirrorAxes | null): Distance[] {
  const fastener = model.fasteners[index];
  if (fastener === undefined) return [];
  const at: Point = fastener.at;
  const { head } = screwSize(fastener);
  const site = nearestSite(sitesOf(model), at);
  const keepOut = nearestKeepOut(model.keepOuts, at, head);
  const { body, frame } = edgeGaps(model, at);
  // The rim of the body is looked at from both sides: from beyond it, on the frame, the screw head must not reach over it.
  const rim = Math.abs(body) - head / 2;
  return [
    ...(site ? [fromHead(site.distance - head / 2, `field ${site.site.name}`)] : []),
    frame > body
      ? fromHead(frame - head / 2, 'the edge of the frame')
      : fromHead(body - head / 2, 'the edge of the body'),
    ...(frame > body && rim < NEAR_RIM ? [fromHead(rim, 'the rim of the body')] : []),
    ...(keepOut && keepOut.gap < FAR ? [fromHead(keepOut.gap, keepOut.name, keepOut.short)] : []),
    ...neighbour(model, index, head, axes),
  ];
}

/** From the edge of the screw head, as the report has it; below zero where they overlap. */
function fromHead(gap: number, what: string, short = gap < 0): Distance {
  const size = Math.abs(gap).toFixed(1);
  return gap < 0
    ? { text: `screw head ${size} mm over ${what}`, short: true }
    : { text: `screw head to ${what} ${size} mm`, short };
}

/** Distance to the mirror partner where linked, else to the next fastener, between centres. */
function neighbour(model: HeadModel, index: number, head: number, axes: MirrorAxes | null): Distance[] {
  const { at } = model.fasteners[index];
  const others = model.fasteners.flatMap((other, i) => (i === index ? [] : [other]));
  const away = (other: { readonly at: Point }) => Math.hypot(other.at[0] - at[0], other.at[1] - at[1]);
  const centre: Point = model.sites.origin ?? [0, 0];
  const images = linkedSigns(axes).map((signs) => mirrored(at, signs, centre));
  const partners = others.filter((other) =>
    images.some(([x, y]) => Math.hypot(other.at[0] - x, other.at[1] - y) < 0.5),
  );
  const [nearest] = (partners.length > 0 ? partners : others).toSorted((a, b) => away(a) - away(b));
  if (nearest === undefined) return [];
  const room = away(nearest) - head / 2 - screwSize(nearest).head / 2;
  const who = `${partners.length > 0 ? 'partner ' : ''}${nearest.name}`;
  return [{ text: `centre to centre of ${who} ${away(nearest).toFixed(1)} mm`, short: room < 0 }];
}

function ofRib(model: HeadModel, index: number): Distance[] {
  const rib = model.frame?.ribs?.[index];
  if (rib === undefined) return [];
  const rings = ribLines(model, rib).map((line) => ribRing(line, rib.width));
  return [{ text: `${rib.width.toFixed(1)} mm wide`, short: false }, ...nearestOf(rings, fieldsOf(model), 'site ')];
}

function ofKeepOut(model: HeadModel, index: number): Distance[] {
  const keepOut = model.keepOuts?.[index];
  const ring = keepOut && displayRing(keepOut.shape);
  if (!ring) return [];
  const { clearance = 0 } = keepOut;
  const screws = model.fasteners.map((fastener) => {
    const [x, y] = fastener.at;
    const edge = distanceToRing(ring, x, y) * (insideRing(ring, x, y) ? -1 : 1);
    return { name: fastener.name, gap: edge - screwSize(fastener).head / 2 };
  });
  const [nearest] = screws.toSorted((a, b) => a.gap - b.gap);
  return [
    ...(nearest
      ? [
          nearest.gap > 0
            ? to(nearest.gap, `fastener ${nearest.name}`, nearest.gap < clearance)
            : { text: `under fastener ${nearest.name}`, short: true },
        ]
      : []),
    ...nearestOf([ring], fieldsOf(model), 'site '),
  ];
}

function ofPitch(model: HeadModel): Distance[] {
  const pitch = pitchOf(model);
  if (pitch === null) return [];
  const { columns, rows, probes } = model.sites;
  const fields = fieldsOf(model);
  const window = model.frame && model.frame.side !== 'board' ? displayRing(model.frame.window) : null;
  const bound = window ?? displayRing(model.body.outline);
  const corners = fields.flatMap(({ ring }) => ring);
  const inside = bound === null || corners.every(([x, y]) => insideRing(bound, x, y));
  const edge = bound === null ? Infinity : Math.min(...corners.map(([x, y]) => distanceToRing(bound, x, y)));
  const gaps = ([0, 1] as const)
    .filter((axis) => (axis === 0 ? columns : rows) > 1)
    .map((axis) => `${(pitch[axis] - probes.field[axis]).toFixed(1)} mm along ${'xy'[axis]}`);
  const limit = window === null ? 'the edge of the body' : 'the window';
  return [
    { text: `free between fields ${gaps.join(', ')}`, short: false },
    ...(edge === Infinity ? [] : [inside ? to(edge, limit, false) : { text: `beyond ${limit}`, short: true }]),
  ];
}

interface Named {
  readonly name: string;
  readonly ring: Ring;
}

function nearestOf(rings: readonly Ring[], others: readonly Named[], kind: string): Distance[] {
  let nearest: { name: string; gap: number } | null = null;
  for (const { name, ring } of others)
    for (const own of rings) {
      const gap = ringGap(own, ring);
      if (nearest === null || gap < nearest.gap) nearest = { name, gap };
    }
  if (nearest === null) return [];
  return [
    nearest.gap > 0
      ? to(nearest.gap, kind + nearest.name, false)
      : { text: `over ${kind}${nearest.name}`, short: true },
  ];
}

function fieldsOf(model: HeadModel): Named[] {
  const sites = sitesOf(model);
  const rings = siteRings(sites);
  return sites.map(({ name }, i) => ({ name, ring: rings[i] }));
}

/** Sites of the model as edited; none while it is one that the solver refuses. */
function sitesOf({ sites }: HeadModel): readonly Site[] {
  try {
    return siteLayout(sites);
  } catch {
    return [];
  }
}

/** From a point to the outer edges of body and frame, mm: positive within; minus infinity where there is none. */
function edgeGaps(model: HeadModel, [x, y]: Point): { readonly body: number; readonly frame: number } {
  const [body = -Infinity, frame = -Infinity] = planOutlines(model).map(
    (ring) => distanceToRing(ring, x, y) * (insideRing(ring, x, y) ? 1 : -1),
  );
  return { body, frame };
}

function to(mm: number, what: string, short: boolean): Distance {
  return { text: `${mm.toFixed(1)} mm to ${what}`, short };
}
