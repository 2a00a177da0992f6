import { Fault } from '../../fault/fault.ts';
import type { Point } from '../../geometry/point.ts';
import { caseProblems, fastenerSupport, headPlan } from '../../model/compile.ts';
import { type PartEdges, partEdges, partRegions } from '../../model/edge-distance.ts';
import { placeFastener } from '../../model/fasteners.ts';
import type { Fastener, HeadModel } from '../../model/head-model.ts';
import { headDiameter } from '../../model/keep-outs.ts';
import { seatSupports } from '../../model/seats.ts';
import { didYouMean } from '../../plate/near-names.ts';
import { sampleAreas } from '../../results/sample-areas.ts';
import { plateKey } from '../../structure/groups.ts';
import { type LoadRow, loadingOf } from '../../structure/loading.ts';
import { type Meshed, meshPlate } from '../../structure/meshed.ts';
import { isCoupled } from '../../structure/sections.ts';
import { stopwatch } from '../../structure/stopwatch.ts';
import { buildStructure } from '../../structure/structure.ts';
import type { Field } from './field.ts';
import type { Goal } from './goal.ts';
import type { PlacementPlan, Through } from './plan.ts';
import { headRoom, type Room } from './room.ts';
import { type Ground, groundOf, type Place } from './stand.ts';

/** A head as a field to search in. */
export interface HeadField extends Field {
  /** Fastener of the model that those placed are like. */
  readonly like: Fastener;
  readonly fixedNames: readonly string[];
  /** Part that screws go through here. */
  readonly through: Through;
  /** Distances of a point from the edges of body and frame. */
  partsAt(at: Point): PartEdges;
  roomThrough(part: Through): Room;
}

/**
 * Grounds, room and goal of a head; screws go through the frame if there is one and the plan does not say. The mesh is not graded towards fasteners, so that no position is favoured.
 *
 * @param meshOf mesh of an earlier solve to stand on instead, by the end of a bracketed joint; `null` makes one
 * @throws Fault with the path in the model or in the plan
 */
export function headField(
  model: HeadModel,
  plan: PlacementPlan,
  meshOf: (end: string) => Meshed | null = () => null,
): HeadField {
  requireLevelBoard(model);
  const fixedNames = plan.fixed ?? [];
  const fixed = fixedNames.map((name, i) => named(model, name, `fixed.${i}`));
  const like = likeOf(model, plan, fixedNames);
  const base = headPlan(model);
  const placed = fixed.map((fastener) =>
    placeFastener(model, base.parts, fastener, `fasteners.${model.fasteners.indexOf(fastener)}`),
  );
  const seats = seatSupports(base.seats);
  const reach = headDiameter(like);
  const { through = model.frame === undefined ? 'either' : 'frame', edge = 0 } = plan;
  const regions = partRegions(base.parts, model.frame?.side);
  const roomThrough = (part: Through) => headRoom(model, base, like, edge, part);
  return {
    grounds: groundsOf(model, meshOf),
    goal: goalOf(model, plan),
    room: roomThrough(through),
    through,
    partsAt: (at) => partEdges(regions, at),
    roomThrough,
    always: [
      ...placed.map(
        (fastener): Place => ({ at: fastener.at, support: fastenerSupport(fastener), joint: fastener.joint }),
      ),
      ...seats.map((support): Place => ({ at: support.at, support, joint: null })),
    ],
    fixed: fixed.length,
    placeAt: (at) => {
      const fastener = placeFastener(model, base.parts, { ...like, at: [at[0], at[1]] }, 'fasteners');
      return { at, support: fastenerSupport(fastener), joint: fastener.joint };
    },
    touching: Math.max(reach, ...fixed.map((fastener) => (reach + headDiameter(fastener)) / 2)),
    form: null,
    like,
    fixedNames,
  };
}

/** A place that is searched has no measured height. */
function requireLevelBoard({ fasteners, seats = [] }: HeadModel): void {
  for (const [list, holders] of Object.entries({ fasteners, seats })) {
    const uneven = holders.findIndex(({ height = 0 }) => height !== 0);
    if (uneven >= 0)
      throw new Fault(
        'NOT_YET',
        `${holders[uneven].name} has a measured height of ${holders[uneven].height} mm, and heights at other places are not known: places are searched on a level board. Remove the heights, search, and check the result with them.`,
        `${list}.${uneven}.height`,
        { value: holders[uneven].height },
      );
  }
}

/** One ground for each end of the joint between frame and body, and each set of cases that share a factor. */
function groundsOf(model: HeadModel, meshOf: (end: string) => Meshed | null): Ground[] {
  const { frame } = model;
  const ends: [string, HeadModel][] =
    frame?.join === 'bracket'
      ? (['sliding', 'bonded'] as const).map((join) => [join, { ...model, frame: { ...frame, join } }])
      : [['', model]];
  return ends.flatMap(([label, end]) => {
    const plan = headPlan(end);
    const { cases, problems } = caseProblems(end, plan, []);
    const coupled = problems.some(isCoupled);
    const clock = stopwatch();
    const meshed = meshOf(label) ?? meshPlate(problems[0], plan.siteArea, 1, clock, coupled);
    const areas = sampleAreas(
      meshed.mesh,
      meshed.firstArea,
      plan.sites.map(({ name }) => name),
    );
    const keys = problems.map(plateKey);
    return [...new Set(keys)].flatMap((key) => {
      const members = keys.flatMap((other, i) => (other === key ? [i] : []));
      const structure = buildStructure(problems[members[0]], meshed, clock);
      const rows = new Map<string, LoadRow>();
      const loaded = members
        .map((i) => ({ name: cases[i].name, load: cases[i], loading: loadingOf(structure, problems[i], rows) }))
        // A case without any load keeps the head as it was.
        .filter(({ loading }) => loading.f.some((force) => force !== 0));
      return loaded.length === 0 ? [] : [groundOf(label, structure, areas, loaded)];
    });
  });
}

function goalOf({ limits, sites }: HeadModel, plan: PlacementPlan): Goal {
  const { objective = 'bow', weights = { bow: 1, flatness: 1 } } = plan;
  const { fastener, contactForce } = limits;
  if (objective === 'share' && limits.flatness === undefined)
    throw new Fault(
      'SCHEMA',
      'The objective "share" compares bow and flatness with their limits, but the model has no limit on flatness. Give limits.flatness, or choose "bow" or "flatness".',
      'objective',
      { value: objective },
    );
  const isShare = objective === 'share';
  return {
    objective,
    bow: objective === 'bow' ? 1 : isShare ? weights.bow / limits.bow : 0,
    flatness: objective === 'flatness' ? 1 : isShare ? weights.flatness / limits.flatness! : 0,
    limits: {
      ...(fastener === undefined ? {} : { fastener }),
      ...(contactForce === undefined ? {} : { contactForce }),
    },
    probes: sites.probes,
  };
}

function named({ fasteners }: HeadModel, name: string, path: string): Fastener {
  const found = fasteners.find((fastener) => fastener.name === name);
  if (found !== undefined) return found;
  const known = fasteners.map((fastener) => fastener.name);
  throw new Fault(
    'SCHEMA',
    `The model has no fastener "${name}".${didYouMean(name, known)} Its fasteners are ${known.slice(0, 12).join(', ')}.`,
    path,
    { value: name, expected: known.slice(0, 50) },
  );
}

/** @throws Fault SCHEMA when the fasteners to be moved are not alike and the plan does not choose one */
function likeOf(model: HeadModel, { like }: PlacementPlan, fixed: readonly string[]): Fastener {
  if (like !== undefined) return named(model, like, 'like');
  const free = model.fasteners.filter(({ name }) => !fixed.includes(name));
  const [first = model.fasteners[0]] = free;
  if (first === undefined)
    throw new Fault(
      'SCHEMA',
      'The model has no fastener that those placed could be like. Give it one, anywhere on the head.',
      'fasteners',
    );
  const kind = ({ name: _name, at: _at, ...rest }: Fastener) =>
    JSON.stringify(Object.entries(rest).sort(([a], [b]) => (a < b ? -1 : 1)));
  const other = free.find((fastener) => kind(fastener) !== kind(first));
  if (other !== undefined)
    throw new Fault(
      'SCHEMA',
      `Fasteners ${first.name} and ${other.name} are not alike. Say which one those placed are like with "like", or keep some where they are with "fixed".`,
      'like',
      { expected: free.map(({ name }) => name).slice(0, 50) },
    );
  return first;
}
