import { Fault } from '../fault/fault.ts';
import type { Ring } from '../geometry/point.ts';
import { ringArea } from '../geometry/region.ts';
import type { Site } from '../layout/site.ts';
import { siteLayout } from '../layout/sites.ts';
import type { PlateProblem } from '../plate/plate-problem.ts';
import { type PlacedFastener, placeFasteners } from './fasteners.ts';
import type { Frame, HeadModel } from './head-model.ts';
import { caseLoads } from './loads.ts';
import { meshSize } from './mesh-size.ts';
import { type HeadParts, headParts, outerRings } from './parts.ts';
import { fieldRing, requireSiteRoom } from './site-room.ts';
import { polygon, zonesOf } from './zones.ts';

/** What follows from body, frame and sites alone, however the head is held and loaded. */
export interface HeadPlan {
  /** Of what it was made from: a plan with the same key is the same plan. */
  readonly key: string;
  readonly sites: readonly Site[];
  /** Rings of the probe fields, in the order of the sites. */
  readonly siteArea: readonly Ring[];
  readonly parts: HeadParts;
  /** Without supports and loads. */
  readonly plate: PlateProblem;
  /** mm */
  readonly meshSize: number;
  /** Numerical error of bow and flatness over their limits that the mesh is refined to; infinite where none is asked. */
  readonly tolerance: number;
}

/** A head as plates to solve. */
export interface CompiledHead extends Pick<HeadPlan, 'sites' | 'siteArea' | 'meshSize'> {
  /** One for each load case; they share everything but their loads. */
  readonly problems: readonly PlateProblem[];
  /** In the order of the model, and of the supports of each problem. */
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
  requireNames(model);
  const key = planKey(model);
  const plan = previous?.key === key ? previous : planHead(model, key);
  const { sites, siteArea, meshSize } = plan;
  const fasteners = placeFasteners(model, plan.parts, sites, siteArea);
  const supports = fasteners.map(({ name, at: [x, y], bearing, stiffness, acts }) => ({
    name,
    at: [x, y] as [number, number],
    diameter: bearing,
    stiffness,
    acts,
  }));
  const plate = { ...plan.plate, name: model.name, supports, theory: model.theory ?? 'shear' };
  const problems = model.cases.map((_, i) => ({ ...plate, loads: caseLoads(model, sites, i) }));
  return { problems, sites, siteArea, fasteners, meshSize, plan };
}

function planKey({ body, frame, sites, mesh, materials }: HeadModel): string {
  return JSON.stringify([body, frame, sites, mesh, materials]);
}

function planHead(model: HeadModel, key: string): HeadPlan {
  requireSupportedFrame(model.frame);
  const sites = siteLayout(model.sites);
  const size = meshSize(model);
  const parts = headParts(model, sites, SAGITTA * size);
  const siteArea = sites.map(fieldRing);
  requireSiteRoom(sites, siteArea, parts);
  const [outline] = outerRings(parts.plate);
  const plate: PlateProblem = {
    plate: 1,
    outline: polygon(outline),
    openings: parts.plate.filter((ring) => ringArea(ring) < 0).map(polygon),
    ...zonesOf(model, parts, siteArea),
    mesh: { size },
  };
  const { mesh } = model;
  const tolerance = mesh !== undefined && 'tolerance' in mesh ? mesh.tolerance : Infinity;
  return { key, sites, siteArea, parts, plate, meshSize: size, tolerance };
}

/** Results are told apart by name. */
function requireNames({ fasteners, cases, keepOuts = [] }: HeadModel): void {
  for (const [list, items] of Object.entries({ fasteners, cases, keepOuts })) {
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

function requireSupportedFrame(frame: Frame | undefined): void {
  if (frame === undefined) return;
  const { side, join } = frame;
  if (join === 'bracket')
    throw new Fault(
      'NOT_YET',
      'frame.join is "bracket", which is not solved by this version. Use "sliding" for a screwed frame: it bends more than the real one.',
      'frame.join',
      { value: join, expected: 'sliding, or bonded with side level' },
    );
  if (join === 'bonded' && side !== 'level')
    throw new Fault(
      'NOT_YET',
      `A frame bonded to the ${side} face bends and stretches at once, which is not solved by this version. Use "join": "sliding", or "side": "level".`,
      'frame.join',
      { value: join, expected: 'sliding, or bonded with side level' },
    );
}
