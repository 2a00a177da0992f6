import { Fault } from '../fault/fault.ts';
import { difference, intersection, union } from '../geometry/boolean.ts';
import { distanceToRing, insideRegion } from '../geometry/inside.ts';
import type { Point, Region, Ring } from '../geometry/point.ts';
import { area } from '../geometry/region.ts';
import { shapeRing } from '../geometry/ring.ts';
import type { Site } from '../layout/site.ts';
import type { Frame, HeadModel } from './head-model.ts';
import { type PlacedRib, placeRibs } from './ribs.ts';

/** A part of the frame of one thickness: the frame itself or ribs. */
export interface FramePart {
  readonly region: Region;
  readonly thickness: number;
}

/** The head in plan. */
export interface HeadParts {
  /** Body with its openings cut. */
  readonly body: Region;
  /** The rings of the body's openings. */
  readonly openings: readonly Ring[];
  /** The frame between outer edge and window, without ribs; empty when there is none. */
  readonly frame: Region;
  readonly ribs: readonly PlacedRib[];
  /** Frame and ribs by thickness; where ribs cross, the later one counts. */
  readonly frameParts: readonly FramePart[];
  /** Body without anything on it: where sites may be. */
  readonly bare: Region;
  /** Everything together: one outer ring, and holes. */
  readonly plate: Region;
}

/** Areas below this, mm2, are rounding. */
const NOTHING = 1e-9;

/**
 * Body, frame and ribs of a head in plan.
 *
 * @param chord largest rise of an arc above its edge, mm
 * @throws Fault BAD_SHAPE, OUTSIDE, OUT_OF_RANGE or DISCONNECTED with the path in the model
 */
export function headParts(model: HeadModel, sites: readonly Site[], chord: number): HeadParts {
  const outline = shapeRing(model.body.outline, { chord, path: 'body.outline' });
  const openings = (model.body.openings ?? []).map((shape, i) => {
    const path = `body.openings.${i}`;
    const ring = shapeRing(shape, { chord, path });
    if (area(intersection([outline], [ring])) <= NOTHING)
      throw new Fault(
        'OUTSIDE',
        `The opening of ${path} lies off the body and cuts nothing. Move or remove it.`,
        path,
        {
          expected: 'an opening within body.outline',
        },
      );
    return ring;
  });
  const body = openings.length === 0 ? [outline] : difference([outline], openings);
  const { frame, ribs } = model.frame === undefined ? { frame: [], ribs: [] } : framed(model.frame, sites, chord);
  const frameParts = model.frame === undefined ? [] : byThickness(model.frame, frame, ribs);
  const framing = frameParts.reduce((sum: Region, { region }) => union(sum, region), []);
  const plate = union(body, framing);
  requireOnePiece(plate, frame);
  return { body, openings, frame, ribs, frameParts, bare: difference(body, framing), plate };
}

function framed(frame: Frame, sites: readonly Site[], chord: number) {
  const outer = shapeRing(frame.outer, { chord, path: 'frame.outer' });
  const window = shapeRing(frame.window, { chord, path: 'frame.window' });
  if (area(difference([window], [outer])) > NOTHING)
    throw new Fault(
      'OUTSIDE',
      'The window of the frame reaches beyond its outer edge. Make the window smaller, or the frame larger.',
      'frame.window',
      { expected: 'a window within frame.outer' },
    );
  const ring = difference([outer], [window]);
  if (outerRings(ring).length !== 1)
    throw new Fault(
      'DISCONNECTED',
      `The window leaves ${outerRings(ring).length} pieces of the frame. Make the window smaller, or the frame larger.`,
      'frame.window',
      { parts: outerRings(ring).length },
    );
  return { frame: ring, ribs: placeRibs(frame, outer, ring, sites) };
}

/** Ribs lie on the frame where they reach into it: there the frame keeps its thickness. */
function byThickness({ thickness }: Frame, frame: Region, ribs: readonly PlacedRib[]): FramePart[] {
  const parts = new Map<number, Region>();
  for (const rib of ribs) {
    const free = difference(rib.region, frame);
    for (const [other, region] of parts) parts.set(other, difference(region, free));
    parts.set(rib.thickness, union(parts.get(rib.thickness) ?? [], free));
  }
  parts.set(thickness, union(frame, parts.get(thickness) ?? []));
  return [...parts].map(([t, region]) => ({ region, thickness: t }));
}

/** Rings that enclose, not holes. */
export function outerRings(region: Region): Ring[] {
  return region.filter((ring) => area([ring]) > NOTHING);
}

function requireOnePiece(plate: Region, frame: Region): void {
  const pieces = outerRings(plate).sort((a, b) => area([b]) - area([a]));
  if (pieces.length === 1) return;
  const [main, stray] = pieces;
  const at = stray[0];
  const gap = gapBetween(main, stray, plate);
  const framedApart = frame.length > 0;
  throw new Fault(
    'DISCONNECTED',
    framedApart
      ? `Body and frame do not touch: between their parts near [${at.map((c) => c.toFixed(2))}] is a gap of ${gap.toFixed(3)} mm. Let the frame reach onto the body.`
      : `The openings cut the body into ${pieces.length} pieces; one is near [${at.map((c) => c.toFixed(2))}]. Make the openings smaller.`,
    framedApart ? 'frame' : 'body.openings',
    { parts: pieces.length, at, gap },
  );
}

/** Least distance between a piece and the rest of the plate, from corner to edge either way. */
function gapBetween(main: Ring, stray: Ring, plate: Region): number {
  const others = plate.filter((ring) => ring !== stray && (ring === main || !within(stray, ring)));
  return Math.min(
    ...others.flatMap((ring) => [
      ...stray.map(([x, y]) => distanceToRing(ring, x, y)),
      ...ring.map(([x, y]) => distanceToRing(stray, x, y)),
    ]),
  );
}

function within(outer: Ring, ring: Ring): boolean {
  const [x, y]: Point = ring[0];
  return insideRegion([outer], x, y);
}
