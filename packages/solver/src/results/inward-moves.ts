import { distanceToRing, insideRing } from '../geometry/inside.ts';
import type { Point, Ring } from '../geometry/point.ts';
import { shapeRing } from '../geometry/ring.ts';
import type { Site } from '../layout/site.ts';
import type { HeadModel } from '../model/head-model.ts';
import { headDiameter, keepOutRemarks } from '../model/keep-outs.ts';

/** Fasteners that move towards the sites together, and in which direction. */
export interface InwardMove {
  readonly indices: readonly number[];
  /** `sites`: straight towards the nearest point of the site area. */
  readonly along: 'x' | 'y' | 'sites';
}

/** Fasteners this close to a mirrored place belong together, mm. */
const PARTNER = 0.5;
/** Nearer to an edge than this a screw head shall not come, mm. */
const EDGE = 0.25;
/** Places are told in tenths of a millimetre. */
const GRID = 10;
/** Groups that are tried, nearest to the worst place first. */
const MOST_GROUPS = 8;
/** Sagitta of arcs, mm. */
const CHORD = 0.005;

/** Moves to try: fasteners opposite each other together, nearest to `worst` first, then all of them. */
export function inwardMoves(model: HeadModel, sites: readonly Site[], worst: Point): InwardMove[] {
  const area = siteBox(sites);
  const all = model.fasteners.map((_, i) => i);
  const far = (group: readonly number[]): number =>
    Math.min(...group.map((i) => Math.hypot(model.fasteners[i].at[0] - worst[0], model.fasteners[i].at[1] - worst[1])));
  const groups = mirrorGroups(model)
    .toSorted((a, b) => far(a) - far(b))
    .slice(0, MOST_GROUPS);
  if (groups.every((group) => group.length < all.length)) groups.push(all);
  return groups.flatMap((indices) => {
    const ways = indices.map((i) => towards(area, model.fasteners[i].at));
    const [alongX, alongY] = [ways.some(([dx]) => dx !== 0), ways.some(([, dy]) => dy !== 0)];
    return [
      ...(alongX ? [{ indices, along: 'x' as const }] : []),
      ...(alongY ? [{ indices, along: 'y' as const }] : []),
      ...(alongX && alongY ? [{ indices, along: 'sites' as const }] : []),
    ];
  });
}

/**
 * The model with the move made by so many mm, as far as each fastener has a way to go; `null` where that is none, or a
 * screw head would come into a keep-out, over an edge of body or frame, or off the part that it sits on.
 */
export function movedInwards(
  model: HeadModel,
  sites: readonly Site[],
  { indices, along }: InwardMove,
  by: number,
): HeadModel | null {
  const area = siteBox(sites);
  const fasteners = model.fasteners.map((fastener, i) => {
    if (!indices.includes(i)) return fastener;
    const [dx, dy] = towards(area, fastener.at);
    const way = along === 'x' ? [dx, 0] : along === 'y' ? [0, dy] : [dx, dy];
    const length = Math.hypot(way[0], way[1]);
    if (length === 0) return fastener;
    const share = by / length;
    const at = (axis: 0 | 1): number => Math.round((fastener.at[axis] + share * way[axis]) * GRID) / GRID;
    return share > 1 ? null : { ...fastener, at: [at(0), at(1)] satisfies [number, number] };
  });
  if (fasteners.some((fastener) => fastener === null)) return null;
  const kept = fasteners.filter((fastener) => fastener !== null);
  const moved = kept.filter((fastener, i) => fastener !== model.fasteners[i]);
  if (moved.length === 0 || keepOutRemarks({ ...model, fasteners: moved }).length > 0) return null;
  const edges = edgeRings(model);
  const clear = kept.every((fastener, i) => {
    const radius = headDiameter(fastener) / 2 + EDGE;
    return edges.every((edge) => {
      const [before, after] = [model.fasteners[i].at, fastener.at].map((at) => signedGap(edge, at));
      return Math.sign(before) === Math.sign(after) && Math.abs(after) >= Math.min(radius, Math.abs(before));
    });
  });
  return clear ? { ...model, fasteners: kept } : null;
}

/** Fasteners in sets that mirror each other across the middle lines of the site pattern. */
function mirrorGroups({ fasteners, sites: { origin = [0, 0] } }: HeadModel): number[][] {
  const groups: number[][] = [];
  fasteners.forEach(({ at }, i) => {
    const [x, y] = [Math.abs(at[0] - origin[0]), Math.abs(at[1] - origin[1])];
    const mine = groups.find(([first]) => {
      const [fx, fy] = fasteners[first].at;
      return Math.hypot(Math.abs(fx - origin[0]) - x, Math.abs(fy - origin[1]) - y) <= PARTNER;
    });
    if (mine === undefined) groups.push([i]);
    else mine.push(i);
  });
  return groups;
}

/** Lower and upper corner of the box around all probe fields. */
function siteBox(sites: readonly Site[]): readonly [low: Point, high: Point] {
  const end = (axis: 0 | 1, sign: 1 | -1): number =>
    sign * Math.max(...sites.map(({ centre, field }) => sign * centre[axis] + field[axis] / 2));
  return [
    [end(0, -1), end(1, -1)],
    [end(0, 1), end(1, 1)],
  ];
}

/** From a point to the nearest point of a box. */
function towards([low, high]: readonly [Point, Point], at: Point): Point {
  const way = (axis: 0 | 1): number => Math.min(Math.max(at[axis], low[axis]), high[axis]) - at[axis];
  return [way(0), way(1)];
}

function edgeRings({ body, frame }: HeadModel): Ring[] {
  const shapes = [
    [body.outline, 'body.outline'] as const,
    ...(body.openings ?? []).map((shape, i) => [shape, `body.openings.${i}`] as const),
    ...(frame ? [[frame.outer, 'frame.outer'] as const, [frame.window, 'frame.window'] as const] : []),
  ];
  return shapes.map(([shape, path]) => shapeRing(shape, { chord: CHORD, path }));
}

/** Distance to a ring, negative inside, mm. */
function signedGap(ring: Ring, [x, y]: Point): number {
  return distanceToRing(ring, x, y) * (insideRing(ring, x, y) ? -1 : 1);
}
