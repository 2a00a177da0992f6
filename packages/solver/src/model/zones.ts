import { Fault } from '../fault/fault.ts';
import { difference, intersection } from '../geometry/boolean.ts';
import type { Region, Ring } from '../geometry/point.ts';
import { perimeter, ringArea } from '../geometry/region.ts';
import type { Site } from '../layout/site.ts';
import type { PlateProblem } from '../plate/plate-problem.ts';
import { cellArea } from '../section/hole-array.ts';
import type { Layer, Section } from '../section/section.ts';
import { requireDrillable } from '../section/stepped-holes.ts';
import type { Frame, HeadModel, Material } from './head-model.ts';
import { findMaterial } from './materials.ts';
import { type HeadParts, outerRings } from './parts.ts';
import type { SiteProbes } from './site-probes.ts';

/** Rings narrower than this, mm (2A/P), are rounding left by the booleans. */
const NARROWEST = 1e-6;

/** Probes over holes in the field that still pass: a field may be given to the outer holes' centres. */
const FULL = 1.2;

type PlateRegion = NonNullable<PlateProblem['regions']>[number];
type SolidSection = Pick<Material, 'E' | 'nu' | 'expansion'> & { readonly thickness: number };

/** What a layer of a section belongs to. */
export type PartName = 'body' | 'frame';

/** Sections of a head as a plate problem has them: the body's, and regions that overwrite it. */
export interface Zones {
  readonly section: Section;
  readonly regions: PlateRegion[];
  /** Part of each layer of each section: of the base section, then of each region. */
  readonly parts: readonly (readonly PartName[])[];
}

/** Parts from the board outwards where body and frame lie on each other. */
const JOINED: Readonly<Record<Frame['side'], readonly PartName[]>> = {
  board: ['frame', 'body'],
  device: ['body', 'frame'],
  level: ['frame', 'body', 'frame'],
};

/**
 * Cuts the plate into zones of one section - body, frame, and both - and orders their outer rings so that painting one
 * over the other gives the zones back: the outer rings of zones that do not overlap are nested or apart, so the larger
 * goes first, and holes need no ring of their own. Drilled probe fields go last.
 *
 * @param fields rings of the probe fields
 */
export function zonesOf(model: HeadModel, parts: HeadParts, fields: readonly Ring[]): Zones {
  const section = bodySection(model);
  const framed = framedRegions(model, section, parts);
  const drilled = drilledRegions(model, section, fields);
  return {
    section,
    regions: [...framed.map(({ parts: _parts, ...region }) => region), ...drilled],
    parts: [['body'], ...framed.map((region) => region.parts), ...drilled.map(() => ['body'] as const)],
  };
}

/** Fields are drilled into the bare body: nothing else reaches over them. */
function drilledRegions(model: HeadModel, section: SolidSection, fields: readonly Ring[]): PlateRegion[] {
  const { holes } = model.sites.probes;
  if (holes === undefined) return [];
  requireDrillable(holes, section.thickness, 'sites.probes.holes');
  return fields.map((field) => ({ shape: polygon(field), section: { ...section, holes } }));
}

/** @throws Fault OUT_OF_RANGE when there are more probes than holes in the field */
export function requireFieldRoom(
  { sites: { probes } }: HeadModel,
  sites: readonly Site[],
  siteProbes: readonly SiteProbes[],
): void {
  const { holes } = probes;
  if (holes === undefined) return;
  const roomIn = ({ field }: Site) => (field[0] * field[1]) / cellArea(holes);
  const full = sites.findIndex((site, i) => siteProbes[i].count > FULL * roomIn(site));
  if (full < 0) return;
  const [room, { count }] = [roomIn(sites[full]), siteProbes[full]];
  const [width, height] = sites[full].field;
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
): readonly (PlateRegion & { readonly parts: readonly PartName[] })[] {
  if (model.frame === undefined) return [];
  const { frame } = model;
  const zones: { region: Region; section: Section; parts: readonly PartName[] }[] = [
    { region: bare, section, parts: ['body'] },
  ];
  for (const { region, thickness } of frameParts) {
    zones.push({
      region: difference(region, body),
      section: frameSection(model, frame, thickness),
      parts: ['frame'],
    });
    zones.push({
      region: intersection(region, body),
      section: joinedSection(model, frame, thickness),
      parts: JOINED[frame.side],
    });
  }
  const rings = zones
    .flatMap(({ region, ...zone }) => outerRings(region).map((ring) => ({ ring, ...zone })))
    .filter(({ ring }) => (2 * ringArea(ring)) / perimeter(ring) > NARROWEST)
    .sort((a, b) => ringArea(b.ring) - ringArea(a.ring));
  const plain = rings.findIndex((zone) => zone.section !== section);
  const painted = plain < 0 ? [] : rings.slice(plain);
  return painted.map(({ ring, ...zone }) => ({ shape: polygon(ring), ...zone }));
}

/** A ring as the shape of a plate problem. */
export function polygon(ring: Ring): { polygon: [number, number][] } {
  return { polygon: ring.map(([x, y]) => [x, y]) };
}

function bodySection(model: HeadModel): SolidSection {
  return { ...elastic(bodyMaterial(model)), thickness: model.body.thickness };
}

/** The frame where there is no body: bonded to one face of it, its middle lies off the body's. */
function frameSection(model: HeadModel, frame: Frame, thickness: number): Section {
  const solid = { ...elastic(frameMaterial(model, frame)), thickness };
  if (frame.join === 'sliding' || frame.side === 'level') return solid;
  const face = model.body.thickness / 2;
  return { layers: [{ ...solid, bottom: frame.side === 'board' ? -face - thickness : face }], join: 'bonded' };
}

/**
 * Body and frame together, z from the middle of the body. A level frame is let half into either face: half of it above
 * the body and half below.
 */
function joinedSection(model: HeadModel, frame: Frame, thickness: number): Section {
  const face = model.body.thickness / 2;
  const solid = elastic(frameMaterial(model, frame));
  const layer = (thickness: number, bottom: number): Layer => ({ ...solid, thickness, bottom });
  const body: Layer = { ...elastic(bodyMaterial(model)), thickness: 2 * face, bottom: -face };
  const join = frame.join === 'sliding' ? 'sliding' : 'bonded';
  if (frame.side === 'board') return { layers: [layer(thickness, -face - thickness), body], join };
  if (frame.side === 'device') return { layers: [body, layer(thickness, face)], join };
  const half = thickness / 2;
  return { layers: [layer(half, -face - half), body, layer(half, face)], join };
}

function elastic({ E, nu, expansion }: Material): Pick<Material, 'E' | 'nu' | 'expansion'> {
  return expansion === undefined ? { E, nu } : { E, nu, expansion };
}

/** @throws Fault UNKNOWN_MATERIAL */
export function bodyMaterial(model: HeadModel): Material {
  return findMaterial(model, model.body.material, 'body.material');
}

/** @throws Fault UNKNOWN_MATERIAL */
export function frameMaterial(model: HeadModel, frame: Frame): Material {
  return findMaterial(model, frame.material, 'frame.material');
}
