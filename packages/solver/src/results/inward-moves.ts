import { distanceToRing, insideRing } from '../geometry/inside.ts';
import type { Point, Ring } from '../geometry/point.ts';
import type { HeadPlan } from '../model/compile.ts';
import type { HeadModel } from '../model/head-model.ts';
import { headDiameter, keepOutRemarks } from '../model/keep-outs.ts';
import { type MirrorSet, mirrorSets } from './mirror-sets.ts';

/** Fasteners that move towards the sites together, each set in mirror image. */
export interface InwardMove {
  readonly sets: readonly MirrorSet[];
  /** `sites`: straight towards the nearest point of the site area. */
  readonly along: 'x' | 'y' | 'sites';
}

/** Nearer to an edge or a probe field than this a screw head shall not come, mm. */
const EDGE = 0.25;
/** Nearer to each other than this screw heads shall not come, mm. Room for a driver; common practice, no source. */
const APART = 1;
/** Places are told in tenths of a millimetre. */
const GRID = 10;
/** Sets that are tried, nearest to the worst place first. */
const MOST_SETS = 8;

/** Moves to try: each mirror set, nearest to `worst` first, then all fasteners. */
export function inwardMoves(model: HeadModel, plan: HeadPlan, worst: Point): InwardMove[] {
  const area = siteBox(plan);
  const far = (set: MirrorSet): number =>
    Math.min(
      ...set.map(({ index }) => {
        const [x, y] = model.fasteners[index].at;
        return Math.hypot(x - worst[0], y - worst[1]);
      }),
    );
  const sets = mirrorSets(model, middleOf(area)).toSorted((a, b) => far(a) - far(b));
  const groups = sets.slice(0, MOST_SETS).map((set) => [set]);
  if (sets.length > 1) groups.push(sets);
  return groups.flatMap((group) => {
    const ways = group.map((set) => wayOf(area, model, set));
    const [alongX, alongY] = [ways.some(([dx]) => dx !== 0), ways.some(([, dy]) => dy !== 0)];
    return [
      ...(alongX ? [{ sets: group, along: 'x' as const }] : []),
      ...(alongY ? [{ sets: group, along: 'y' as const }] : []),
      ...(alongX && alongY ? [{ sets: group, along: 'sites' as const }] : []),
    ];
  });
}

/**
 * The fasteners with the move made by so many mm, as far as each set has a way to go; `null` where that is none, or a
 * screw head would come into a keep-out, too near to another, to an edge of body, frame or rib or to a probe field, or
 * off the part that it sits on. What is nearer already may stay as near.
 */
export function movedInwards(
  model: HeadModel,
  plan: HeadPlan,
  { sets, along }: InwardMove,
  by: number,
): HeadModel['fasteners'] | null {
  const area = siteBox(plan);
  const fasteners = [...model.fasteners];
  for (const set of sets) {
    const [dx, dy] = wayOf(area, model, set);
    const way = along === 'x' ? [dx, 0] : along === 'y' ? [0, dy] : [dx, dy];
    const length = Math.hypot(way[0], way[1]);
    if (length === 0) continue;
    if (by > length) return null;
    const first = model.fasteners[set[0].index].at;
    // One of the set comes to lie on the grid; the others go the same way in mirror image.
    const step = (axis: 0 | 1): number =>
      way[axis] === 0 ? 0 : Math.round((first[axis] + (by / length) * way[axis]) * GRID) / GRID - first[axis];
    for (const { index, sign } of set) {
      const { at } = model.fasteners[index];
      const to = (axis: 0 | 1): number => tidy(at[axis] + sign[axis] * step(axis));
      fasteners[index] = { ...fasteners[index], at: [to(0), to(1)] };
    }
  }
  const moved = fasteners.filter((fastener, i) => fastener !== model.fasteners[i]);
  if (moved.length === 0 || keepOutRemarks({ ...model, fasteners: moved }).length > 0) return null;
  return keepTheirRoom(fasteners, model.fasteners, plan) ? fasteners : null;
}

function keepTheirRoom(after: HeadModel['fasteners'], before: HeadModel['fasteners'], plan: HeadPlan): boolean {
  const { body, frameParts } = plan.parts;
  const edges: Ring[] = [...body, ...frameParts.flatMap(({ region }) => region), ...plan.siteArea];
  return after.every((fastener, i) => {
    const radius = headDiameter(fastener) / 2;
    if (fastener === before[i]) return true;
    const clear = edges.every((edge) => {
      const [was, is] = [before[i].at, fastener.at].map((at) => signedGap(edge, at));
      return Math.sign(was) === Math.sign(is) && Math.abs(is) >= Math.min(radius + EDGE, Math.abs(was));
    });
    return (
      clear &&
      after.every((other, j) => {
        const apart = distance(fastener.at, other.at);
        const wanted = radius + headDiameter(other) / 2 + APART;
        return j === i || apart >= Math.min(wanted, distance(before[i].at, before[j].at));
      })
    );
  });
}

/** Lower and upper corner of the box around all probe fields. */
export function siteBox({ sites }: Pick<HeadPlan, 'sites'>): readonly [low: Point, high: Point] {
  const end = (axis: 0 | 1, sign: 1 | -1): number =>
    sign * Math.max(...sites.map(({ centre, field }) => sign * centre[axis] + field[axis] / 2));
  return [
    [end(0, -1), end(1, -1)],
    [end(0, 1), end(1, 1)],
  ];
}

function middleOf([low, high]: readonly [Point, Point]): Point {
  return [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2];
}

/** From the first of a set to the nearest point of a box; not off a mirror line that it lies on. */
function wayOf([low, high]: readonly [Point, Point], { fasteners }: HeadModel, set: MirrorSet): Point {
  const { at } = fasteners[set[0].index];
  const way = (axis: 0 | 1): number =>
    set[0].onLine[axis] ? 0 : Math.min(Math.max(at[axis], low[axis]), high[axis]) - at[axis];
  return [way(0), way(1)];
}

/** Distance to a ring, negative inside, mm. */
function signedGap(ring: Ring, [x, y]: Point): number {
  return distanceToRing(ring, x, y) * (insideRing(ring, x, y) ? -1 : 1);
}

function distance(a: Point, b: Point): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1]);
}

function tidy(value: number): number {
  return Math.round(value * 1e9) / 1e9;
}
