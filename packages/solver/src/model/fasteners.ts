import { Fault } from '../fault/fault.ts';
import { distanceToRing, insideRegion, insideRing } from '../geometry/inside.ts';
import type { Point, Ring } from '../geometry/point.ts';
import type { Site } from '../layout/site.ts';
import { type ClampedLayer, fastenerStiffness, type StiffnessTerms, stiffnessTerms } from './fastener-stiffness.ts';
import type { Fastener, HeadModel } from './head-model.ts';
import { type Joint, jointOf, requireJudgeable } from './joint.ts';
import type { HeadParts } from './parts.ts';
import { findScrew } from './screws.ts';
import { tappedPart } from './tapped-part.ts';
import { bodyMaterial, frameMaterial } from './zones.ts';

/** A fastener as it holds the plate. */
export interface PlacedFastener {
  readonly name: string;
  readonly at: Point;
  /** Diameter of its bearing disc, mm; 0 = a point. */
  readonly bearing: number;
  /** N/mm; `null` = rigid. */
  readonly stiffness: number | null;
  readonly acts: 'both' | 'pull' | 'push';
  /** What an estimated stiffness is made of; `null` where the model gives it. */
  readonly terms: StiffnessTerms | null;
  /** `null` without a preload. */
  readonly joint: Joint | null;
}

/** Fasteners whose distance from one line is below this share of their spread lie on it. */
const STRAIGHT = 1e-3;

/**
 * Fasteners with their bearings and stiffness.
 *
 * @throws Fault UNKNOWN_SCREW, SCHEMA, OUT_OF_RANGE, OUTSIDE, OVERLAP or MECHANISM with the path in the model
 */
export function placeFasteners(
  model: HeadModel,
  parts: HeadParts,
  sites: readonly Site[],
  fields: readonly Ring[],
): PlacedFastener[] {
  const placed = model.fasteners.map((fastener, i) => placeFastener(model, parts, fastener, `fasteners.${i}`));
  placed.forEach((fastener, i) => {
    requireClearOfSites(fastener, sites, fields, `fasteners.${i}.at`);
    for (let j = 0; j < i; j++) requireApart(placed[j], fastener, `fasteners.${i}.at`);
  });
  requireHeld(placed);
  requireJudgeable(
    model.limits,
    placed.map(({ joint }) => joint),
  );
  return placed;
}

/**
 * A fastener with its bearing and stiffness, whatever else holds the head.
 *
 * @throws Fault UNKNOWN_SCREW, SCHEMA, OUT_OF_RANGE or OUTSIDE with the path in the model
 */
export function placeFastener(model: HeadModel, parts: HeadParts, fastener: Fastener, path: string): PlacedFastener {
  requireOnPlate(fastener, parts, path);
  const bearing = bearingOf(model, fastener, path);
  const stack = stackAt(model, parts, fastener.at);
  const tapped = tappedPart(model, fastener, path);
  const { name, at, acts = 'both' } = fastener;
  const held = fastenerStiffness(fastener, bearing, stack, path, tapped);
  const terms = () => held.terms ?? stiffnessTerms(fastener, bearing, stack, path, tapped);
  return { name, at, bearing, acts, ...held, joint: jointOf(fastener, terms, tapped, path) };
}

function bearingOf(model: HeadModel, { name, screw, bearing }: Fastener, path: string): number {
  if (bearing === 0 && model.theory !== 'thin')
    throw new Fault(
      'OUT_OF_RANGE',
      `Fastener ${name} bears on a point, under which a plate with shear gives way without limit. Give the diameter of its bearing, or use "theory": "thin".`,
      `${path}.bearing`,
      { value: 0, expected: 'above 0' },
    );
  if (bearing !== undefined) return bearing;
  if (screw !== undefined) return findScrew(screw, `${path}.screw`).bearing;
  throw new Fault(
    'SCHEMA',
    `Fastener ${name} has neither a screw nor a bearing. Give "screw", such as "M2.5", or "bearing", the diameter in mm that it bears on.`,
    `${path}.screw`,
    { expected: 'a screw or a bearing' },
  );
}

/** What a fastener clamps at a point, from the board outwards. */
function stackAt(model: HeadModel, { body, frameParts }: HeadParts, [x, y]: Point): ClampedLayer[] {
  const layers: ClampedLayer[] = [];
  if (insideRegion(body, x, y)) layers.push({ thickness: model.body.thickness, material: bodyMaterial(model) });
  const part = frameParts.find(({ region }) => insideRegion(region, x, y));
  if (model.frame === undefined || part === undefined) return layers;
  const frame = { thickness: part.thickness, material: frameMaterial(model, model.frame) };
  return model.frame.side === 'board' ? [frame, ...layers] : [...layers, frame];
}

function requireOnPlate({ name, at }: Fastener, { plate, openings }: HeadParts, path: string): void {
  const [x, y] = at;
  if (insideRegion(plate, x, y)) return;
  const opening = openings.findIndex((ring) => insideRing(ring, x, y));
  throw new Fault(
    'OUTSIDE',
    opening >= 0
      ? `Fastener ${name} at [${at}] lies in the opening of body.openings.${opening}. Move it onto the head.`
      : `Fastener ${name} at [${at}] lies off the head. Move it onto the body or the frame.`,
    `${path}.at`,
    { value: at, expected: 'a point on the body or the frame' },
  );
}

function requireClearOfSites(
  { name, at: [x, y], bearing }: PlacedFastener,
  sites: readonly Site[],
  fields: readonly Ring[],
  path: string,
): void {
  const hit = fields.findIndex((field) => insideRing(field, x, y) || distanceToRing(field, x, y) < bearing / 2);
  if (hit < 0) return;
  throw new Fault(
    'OVERLAP',
    `Fastener ${name} at [${x}, ${y}] with its bearing of ${bearing} mm covers part of the probe field of site ${sites[hit].name}. Move it away from the site.`,
    path,
    { value: [x, y], site: sites[hit].name },
  );
}

function requireApart(a: PlacedFastener, b: PlacedFastener, path: string): void {
  const distance = Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1]);
  const least = (a.bearing + b.bearing) / 2;
  if (distance > 0 && distance >= least) return;
  throw new Fault(
    'OVERLAP',
    `Fasteners ${a.name} and ${b.name} are ${Number(distance.toPrecision(3))} mm apart, but their bearings need ${Number(least.toPrecision(3))} mm. Move or remove one.`,
    path,
    { value: distance, expected: least },
  );
}

/** @throws Fault MECHANISM unless the fasteners hold the head against rotation about every line */
function requireHeld(fasteners: readonly PlacedFastener[]): void {
  const names = fasteners.map(({ name }) => name);
  const free = (message: string): never => {
    throw new Fault('MECHANISM', message, 'fasteners', { fasteners: names });
  };
  if (names.length === 0)
    free('Nothing holds the head: it has no fasteners. Add three or more that do not lie on one line.');
  if (names.length === 1)
    free(`Fastener ${names[0]} alone leaves the head free to rotate; add two more, not all on one line.`);
  if (names.length === 2)
    free(
      `Fasteners ${names[0]} and ${names[1]} leave the head free to rotate about the line through them; add a third fastener off that line.`,
    );
  if (onOneLine(fasteners.map(({ at }) => at)))
    free(
      `Fasteners ${names.slice(0, -1).join(', ')} and ${names[names.length - 1]} lie on one line and leave the head free to rotate about it; move one off that line.`,
    );
}

/** Whether points lie on one line, within a thousandth of their spread. */
export function onOneLine(points: readonly Point[]): boolean {
  const [x0, y0] = points[0];
  const far = points.reduce((a, b) => (Math.hypot(b[0] - x0, b[1] - y0) > Math.hypot(a[0] - x0, a[1] - y0) ? b : a));
  const [dx, dy] = [far[0] - x0, far[1] - y0];
  const spread = Math.hypot(dx, dy);
  return points.every(([x, y]) => Math.abs((x - x0) * dy - (y - y0) * dx) <= STRAIGHT * spread * spread);
}
