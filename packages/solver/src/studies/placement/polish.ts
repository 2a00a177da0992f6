import type { Point } from '../../geometry/point.ts';
import { type Field, fieldJudge, fixedPoints } from './field.ts';
import { areApart, images, rounded } from './orbits.ts';
import type { Mirror } from './plan.ts';
import { seeded } from './seeded.ts';
import { type Column, columnOf, type Stand, standOn } from './stand.ts';

/** Orbits off the grid. */
export interface FreeSlot {
  readonly at: Point;
  readonly mirror: Mirror;
}

/** A placement off the grid. */
export interface Polished {
  readonly value: number;
  readonly slots: readonly FreeSlot[];
}

export interface PolishOptions {
  readonly about: Point;
  readonly clearance: number;
  readonly spacing: number;
  /** First move, mm. */
  readonly step: number;
  readonly seed: number;
  /** Placements tried at most. */
  readonly most: number;
}

/** Last move over the first, and never below this, mm: coordinates go to a drawing. */
const LAST = 1 / 128;
const FINE = 0.01;
/** Columns kept. */
const KEPT = 200;
/** An improvement smaller than this share of the value is rounding. */
const ROUNDING = 1e-9;

/**
 * Moves a placement off the grid while that helps: each orbit along the axes and diagonals, then all of them once more
 * by what they gained together (pattern search, Hooke and Jeeves 1961, memory), by a move that is halved when none
 * helps. The largest of many deflections has no gradient where two are equal, so all orbits also try random
 * directions. Images stay images, and what lies on a mirror stays on it.
 *
 * Yields the number of placements tried.
 *
 * @param stands whose first columns always hold
 */
export function* polish(
  field: Field,
  stands: readonly Stand[],
  start: Polished,
  { about, clearance, spacing, step, seed, most }: PolishOptions,
): Generator<number, Polished, void> {
  const random = seeded(seed);
  const caches = stands.map((): Map<string, Column> => new Map());
  const fixed = fixedPoints(field);
  const size = start.slots.flatMap(({ at, mirror }) => images(at, mirror, about)).length;
  let best = start;
  let tried = 0;
  for (let move = step / 2; move >= Math.max(FINE, step * LAST) && tried < most; ) {
    const from = best;
    for (const directions of singleMoves(best.slots, about)) yield* along(directions, move);
    if (best === from) for (const directions of jointMoves(best.slots, about, random)) yield* along(directions, move);
    if (best === from) {
      move /= 2;
      continue;
    }
    // What helped as a whole may help again: one direction that follows the valley.
    const gained = best.slots.map(({ at }, i): Point => [at[0] - from.slots[i].at[0], at[1] - from.slots[i].at[1]]);
    yield* along(gained, 1);
  }
  return best;

  /** Goes along a direction while that helps, by a move that doubles. */
  function* along(directions: readonly Point[], first: number): Generator<number, void, void> {
    for (let move = first; tried < most; move *= 2) {
      const slots = best.slots.map(({ at, mirror }, i) => ({
        mirror,
        at: [0, 1].map((axis) => toDrawing(at[axis] + move * directions[i][axis])) as [number, number],
      }));
      const points = slots.flatMap(({ at, mirror }) => images(at, mirror, about));
      if (!fits(points)) return;
      tried++;
      const value = valueAt(points, best.value * (1 - ROUNDING));
      yield tried;
      if (!(value < best.value * (1 - ROUNDING))) return;
      best = { value, slots };
    }
  }

  function fits(points: readonly Point[]): boolean {
    // On a mirror two images would become one.
    return (
      points.length === size &&
      points.every((at) => field.room.allows(at) && field.room.siteGap(at) >= clearance - 1e-9) &&
      areApart([...fixed, ...points], spacing)
    );
  }

  function valueAt(points: readonly Point[], below: number): number {
    const own = stands.map(({ ground, columns, fixed: count, always }, s) => {
      const cache = caches[s];
      if (cache.size > KEPT) cache.clear();
      const made = points.map((at) => {
        const key = at.join();
        const column = cache.get(key) ?? columnOf(ground, field.placeAt(at));
        cache.set(key, column);
        return column;
      });
      return standOn(ground, [...columns.slice(0, always), ...made], count, always);
    });
    const first = own[0].always;
    return fieldJudge(field, own, points.length).value(
      Uint32Array.from(points, (_, i) => first + i),
      below,
    );
  }
}

/** Coordinates to a micrometre. A position on a mirror that has more digits stays as it is. */
function toDrawing(coordinate: number): number {
  return rounded(Math.round(coordinate * 1e3) / 1e3);
}

const COMPASS: readonly Point[] = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
  [0.7, 0.7],
  [-0.7, 0.7],
  [0.7, -0.7],
  [-0.7, -0.7],
];

/** Directions of all slots, in each of which one slot moves. */
function singleMoves(slots: readonly FreeSlot[], about: Point): Point[][] {
  return slots.flatMap((slot, i) =>
    COMPASS.map((direction) => kept(direction, slot, about))
      .filter(([dx, dy], k, all) => (dx !== 0 || dy !== 0) && all.findIndex((d) => d[0] === dx && d[1] === dy) === k)
      .map((direction) => slots.map((_, k): Point => (k === i ? direction : [0, 0]))),
  );
}

/** Directions in each of which every slot moves at random. */
function jointMoves(slots: readonly FreeSlot[], about: Point, random: () => number): Point[][] {
  return slots.flatMap(() =>
    [0, 1].map(() => slots.map((slot) => kept([2 * random() - 1, 2 * random() - 1], slot, about))),
  );
}

/** A direction that leaves what lies on a mirror on it. */
function kept([dx, dy]: Point, { at, mirror }: FreeSlot, about: Point): Point {
  return [
    (mirror === 'x' || mirror === 'both') && at[0] === about[0] ? 0 : dx,
    (mirror === 'y' || mirror === 'both') && at[1] === about[1] ? 0 : dy,
  ];
}
