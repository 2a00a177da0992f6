import { Fault } from '../fault/fault.ts';
import type { Ring } from '../geometry/point.ts';
import { ringArea } from '../geometry/region.ts';
import type { Site } from '../layout/site.ts';
import { siteLayout } from '../layout/sites.ts';
import { keyOf } from '../plate/key-of.ts';
import type { PlateProblem, PlateSupport } from '../plate/plate-problem.ts';
import { seatHeights } from './board-heights.ts';
import { type PlacedFastener, placeFasteners } from './fasteners.ts';
import type { HeadModel, Probes } from './head-model.ts';
import { caseTemperature } from './heat.ts';
import { atTemperature } from './hot-materials.ts';
import { type HeadLoadCase, headLoadCases } from './load-cases.ts';
import { caseFoundations, caseLoads, requireFewFoundations, requireProbeData } from './loads.ts';
import { meshSize } from './mesh-size.ts';
import { type HeadParts, headParts, outerRings } from './parts.ts';
import { type PlacedSeat, placeSeats, seatSupports } from './seats.ts';
import { type SiteProbes, siteProbes } from './site-probes.ts';
import { fieldRing, requireSiteRoom } from './site-room.ts';
import { type PartName, polygon, requireFieldRoom, zonesOf } from './zones.ts';

/** What follows from body, frame and sites alone, however the head is held and loaded. */
export interface HeadPlan {
  /** Of what it was made from: a plan with the same key is the same plan. */
  readonly key: string;
  readonly sites: readonly Site[];
  /** Rings of the probe fields, in the order of the sites. */
  readonly siteArea: readonly Ring[];
  /** In the order of the sites. */
  readonly siteProbes: readonly SiteProbes[];
  readonly parts: HeadParts;
  readonly seats: readonly PlacedSeat[];
  /** Without supports and loads. */
  readonly plate: PlateProblem;
  /** Part that each layer of each section of the plate belongs to: of the base section, then of each region. */
  readonly sectionParts: readonly (readonly PartName[])[];
  /** mm */
  readonly meshSize: number;
  /** Numerical error of bow and flatness over their limits that the mesh is refined to; infinite where none is asked. */
  readonly tolerance: number;
}

/** A head as plates to solve. */
export interface CompiledHead extends Pick<HeadPlan, 'sites' | 'siteArea' | 'siteProbes' | 'seats' | 'meshSize'> {
  readonly cases: readonly HeadLoadCase[];
  readonly probes: Probes;
  /** One for each case; they share everything but their loads and, where probes relax, their foundations. */
  readonly problems: readonly PlateProblem[];
  /** In the order of the model, and of the supports of each problem; the cells of the seats come after them. */
  readonly fasteners: readonly PlacedFastener[];
  readonly plan: HeadPlan;
}

/** Rise of an arc above its edge over the element size. */
const SAGITTA = 0.02;

/**
 * Plate problems of a head, one for each load case.
 *
 * @param previous plan of an earlier compile: kept when body, frame and sites have not changed since
 * @throws Fault with the path in the model for a head that makes no sense
 */
export function compileHead(model: HeadModel, previous: HeadPlan | null = null): CompiledHead {
  const plan = headPlan(model, previous);
  const { sites, siteArea, siteProbes, seats, meshSize } = plan;
  const fasteners = placeFasteners(model, plan.parts, sites, siteArea);
  const heights = seatHeights(model, seats);
  const { cases, problems } = caseProblems(model, plan, [
    ...fasteners.map((fastener, i) => ({ ...fastenerSupport(fastener), ...raised(heights.fasteners[i]) })),
    ...seatSupports(seats).map((support, i) => ({ ...support, ...raised(heights.cells[i]) })),
  ]);
  return { cases, probes: model.sites.probes, problems, sites, siteArea, siteProbes, seats, fasteners, meshSize, plan };
}

function raised(height: number): { readonly height?: number } {
  return height === 0 ? {} : { height };
}

/**
 * What follows from body, frame and sites of a head.
 *
 * @param previous kept when they have not changed since
 * @throws Fault with the path in the model
 */
export function headPlan(model: HeadModel, previous: HeadPlan | null = null): HeadPlan {
  requireNames(model);
  requireProbeData(model);
  const key = planKey(model);
  return previous?.key === key ? previous : planHead(model, key);
}

/** The support that stands for a fastener. */
export function fastenerSupport({ name, at: [x, y], bearing, stiffness, acts }: PlacedFastener): PlateSupport {
  return { name, at: [x, y], diameter: bearing, stiffness, acts };
}

/**
 * Plate problems of the cases of a head on the supports given.
 *
 * @throws Fault with the path in the model
 */
export function caseProblems(
  model: HeadModel,
  plan: HeadPlan,
  supports: PlateSupport[],
): Pick<CompiledHead, 'cases' | 'problems'> {
  const { sites } = plan;
  const plate = { ...plan.plate, name: model.name, supports, theory: model.theory ?? 'shear' };
  const cases = headLoadCases(model, sites);
  requireFewFoundations(model, cases);
  const problems = cases.map((load): PlateProblem => {
    const foundations = caseFoundations(model, plan, load);
    const temperature = caseTemperature(model, load.index);
    return {
      ...plate,
      ...hotZones(model, plan, load.index),
      loads: caseLoads(model, plan, load),
      ...(foundations.length === 0 ? {} : { foundations }),
      ...(temperature === undefined ? {} : { temperature }),
    };
  });
  return { cases, problems };
}

/** Sections at the temperature of a case, where they differ from those of assembly. */
function hotZones(model: HeadModel, { parts, siteArea }: HeadPlan, index: number): Partial<PlateProblem> {
  const hot = atTemperature(model, index);
  if (hot === model) return {};
  const { section, regions } = zonesOf(hot, parts, siteArea);
  return { section, regions };
}

function planKey({ body, frame, sites, seats, mesh, materials }: HeadModel): string {
  return keyOf([body, frame, sites, seats, mesh, materials]);
}

function planHead(model: HeadModel, key: string): HeadPlan {
  const sites = siteLayout(model.sites);
  const probes = siteProbes(model.sites, sites);
  const size = meshSize(model);
  const parts = headParts(model, sites, SAGITTA * size);
  const siteArea = sites.map(fieldRing);
  requireSiteRoom(sites, siteArea, parts);
  const seats = placeSeats(model, parts, sites, siteArea, SAGITTA * size);
  const [outline] = outerRings(parts.plate);
  const { parts: sectionParts, ...zones } = zonesOf(model, parts, siteArea);
  requireFieldRoom(model, sites, probes);
  const plate: PlateProblem = {
    plate: 1,
    outline: polygon(outline),
    openings: parts.plate.filter((ring) => ringArea(ring) < 0).map(polygon),
    ...zones,
    mesh: { size },
  };
  const { mesh } = model;
  const tolerance = mesh !== undefined && 'tolerance' in mesh ? mesh.tolerance : Infinity;
  return { key, sites, siteArea, siteProbes: probes, parts, seats, plate, sectionParts, meshSize: size, tolerance };
}

/** Results are told apart by name. */
function requireNames({ fasteners, cases, seats = [], keepOuts = [] }: HeadModel): void {
  for (const [list, items] of Object.entries({ fasteners, cases, seats, keepOuts })) {
    const names = items.map(({ name }) => name);
    const again = names.findIndex((name, i) => names.indexOf(name) < i);
    if (again < 0) continue;
    throw new Fault(
      'SCHEMA',
      `The name "${names[again]}" is used twice in ${list}. Give each its own.`,
      `${list}.${again}.name`,
      { value: names[again] },
    );
  }
}
