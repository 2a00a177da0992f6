import { Fault } from '../fault/fault.ts';
import { difference, intersection } from '../geometry/boolean.ts';
import type { Region, Ring } from '../geometry/point.ts';
import { perimeter, ringArea } from '../geometry/region.ts';
import type { PlateProblem } from '../plate/plate-problem.ts';
import { cellArea, type HoleArray } from '../section/hole-array.ts';
import type { Layer, Section } from '../section/section.ts';
import { requireDrillable } from '../section/stepped-holes.ts';
import type { Frame, HeadModel, Material } from './head-model.ts';
import { findMaterial } from './materials.ts';
import { type HeadParts, outerRings } from './parts.ts';

/** Rings narrower than this, mm (2A/P), are rounding left by the booleans. */
const NARROWEST = 1e-6;

/** Probes over holes in the field that still pass: a field may be given to the outer holes' centres. */
const FULL = 1.2;

type PlateRegion = NonNullable<PlateProblem['regions']>[number];
type SolidSection = Pick<Material, 'E' | 'nu'> & { readonly thickness: number };

/** Sections of a head as a plate problem has them: the body's, and regions that overwrite it. */
export interface Zones {
  readonly section: Section;
  readonly regions: PlateRegion[];
}

/**
 * Cuts the plate into zones of one section - body, frame, and both - and orders their outer rings so that painting one
 * over the other gives the zones back: the outer rings of zones that do not overlap are nested or apart, so the larger
 * goes first, and holes need no ring of their own. Drilled probe fields go last.
 *
 * @param fields rings of the probe fields
 */
export function zonesOf(model: HeadModel, parts: HeadParts, fields: readonly Ring[]): Zones {
  const section = bodySection(model);
  return { section, regions: [...framedRegions(model, section, parts), ...drilledRegions(model, section, fields)] };
}

/** Fields are drilled into the bare body: nothing else reaches over them. */
function drilledRegions(model: HeadModel, section: SolidSection, fields: readonly Ring[]): PlateRegion[] {
  const { holes, count, field } = model.sites.probes;
  if (holes === undefined) return [];
  requireDrillable(holes, section.thickness, 'sites.probes.holes');
  requireFieldRoom(holes, count, field);
  return fields.map((field) => ({ shape: polygon(field), section: { ...section, holes } }));
}

/** @throws Fault OUT_OF_RANGE when there are more probes than holes in the field */
function requireFieldRoom(holes: HoleArray, count: number, [width, height]: readonly [number, number]): void {
  const room = (width * height) / cellArea(holes);
  if (count <= FULL * room) return;
  throw new Fault(
    'OUT_OF_RANGE',
    `A probe field of ${width} x ${height} mm has room for about ${Math.floor(room)} holes at a pitch of ${holes.pitch} mm, but ${count} probes are asked for. Enlarge the field, lower the pitch, or lower the count.`,
    'sites.probes.count',
    { value: count, expected: `at most ${Math.floor(room)}` },
  );
}

function framedRegions(
  model: HeadModel,
  section: SolidSection,
  { body, bare, frameParts }: HeadParts,
): readonly PlateRegion[] {
  if (model.frame === undefined) return [];
  const { frame } = model;
  const zones: { region: Region; section: Section }[] = [{ region: bare, section }];
  for (const { region, thickness } of frameParts) {
    zones.push({ region: difference(region, body), section: frameSection(model, frame, thickness) });
    zones.push({ region: intersection(region, body), section: joinedSection(model, frame, thickness) });
  }
  const rings = zones
    .flatMap((zone) => outerRings(zone.region).map((ring) => ({ ring, section: zone.section })))
    .filter(({ ring }) => (2 * ringArea(ring)) / perimeter(ring) > NARROWEST)
    .sort((a, b) => ringArea(b.ring) - ringArea(a.ring));
  const plain = rings.findIndex((zone) => zone.section !== section);
  const painted = plain < 0 ? [] : rings.slice(plain);
  return painted.map(({ ring, section }) => ({ shape: polygon(ring), section }));
}

/** A ring as the shape of a plate problem. */
export function polygon(ring: Ring): { polygon: [number, number][] } {
  return { polygon: ring.map(([x, y]) => [x, y]) };
}

function bodySection(model: HeadModel): SolidSection {
  const { E, nu } = bodyMaterial(model);
  return { E, nu, thickness: model.body.thickness };
}

function frameSection(model: HeadModel, frame: Frame, thickness: number): Section {
  const { E, nu } = frameMaterial(model, frame);
  return { E, nu, thickness };
}

/**
 * Body and frame together, z from the middle of the body. A level frame is let half into either face: half of it above
 * the body and half below.
 */
function joinedSection(model: HeadModel, frame: Frame, thickness: number): Section {
  const face = model.body.thickness / 2;
  const { E, nu } = frameMaterial(model, frame);
  const layer = (thickness: number, bottom: number): Layer => ({ E, nu, thickness, bottom });
  const body: Layer = { ...pick(bodyMaterial(model)), thickness: 2 * face, bottom: -face };
  const join = frame.join === 'sliding' ? 'sliding' : 'bonded';
  if (frame.side === 'board') return { layers: [layer(thickness, -face - thickness), body], join };
  if (frame.side === 'device') return { layers: [body, layer(thickness, face)], join };
  const half = thickness / 2;
  return { layers: [layer(half, -face - half), body, layer(half, face)], join };
}

function pick({ E, nu }: Material): Pick<Material, 'E' | 'nu'> {
  return { E, nu };
}

/** @throws Fault UNKNOWN_MATERIAL */
export function bodyMaterial(model: HeadModel): Material {
  return findMaterial(model, model.body.material, 'body.material');
}

/** @throws Fault UNKNOWN_MATERIAL */
export function frameMaterial(model: HeadModel, frame: Frame): Material {
  return findMaterial(model, frame.material, 'frame.material');
}
