import type { Point } from '../../geometry/point.ts';
import { type Choice, isClear } from './choices.ts';
import type { Orbit } from './orbits.ts';

/** An orbit of a placement and the group it fills. */
export interface Slot {
  readonly group: number;
  readonly orbit: Orbit;
}

const ATTEMPTS = 50;
/** Rounds in which a start spreads out. */
const ROUNDS = 8;

/**
 * Random orbits in the sizes of one makeup of each group; `null` when they don't find room.
 *
 * @param makeups of each group, from `compositions`
 * @param number of the start: makeups take turns
 */
export function randomSlots(
  choices: readonly Choice[],
  makeups: readonly (readonly number[][])[],
  number: number,
  at: readonly Point[],
  spacing: number,
  random: () => number,
): Slot[] | null {
  if (makeups.some(({ length }) => length === 0)) return null;
  for (let attempt = 0; attempt < ATTEMPTS; attempt++) {
    const slots: Slot[] = [];
    const taken: number[] = [];
    const isFull = choices.every(({ orbits }, group) => {
      const makeup = makeups[group][(number + attempt) % makeups[group].length];
      return makeup.every((size) => {
        const open = orbits.filter(
          ({ points }) =>
            points.length === size && points.every((point) => isClear(at, taken, taken.length, point, spacing)),
        );
        if (open.length === 0) return false;
        const orbit = open[Math.floor(random() * open.length)];
        slots.push({ group, orbit });
        taken.push(...orbit.points);
        return true;
      });
    });
    if (isFull) return slots;
  }
  return null;
}

/**
 * Spreads a start evenly: each orbit goes to the middle of the candidates nearest to it, a few times over (Lloyd 1982),
 * as supports of an even load do. It stays where it is when that breaks the spacing.
 */
export function spread(
  slots: readonly Slot[],
  choices: readonly Choice[],
  at: readonly Point[],
  spacing: number,
): Slot[] {
  let spreading = [...slots];
  for (let round = 0; round < ROUNDS; round++) {
    const owners = spreading.map(({ orbit }) => ({ x: 0, y: 0, count: 0, orbit }));
    for (const [x, y] of at) {
      let [nearest, isFirst, least] = [0, false, Infinity];
      spreading.forEach(({ orbit }, s) => {
        orbit.points.forEach((point, k) => {
          const away = (at[point][0] - x) ** 2 + (at[point][1] - y) ** 2;
          if (away < least) [nearest, isFirst, least] = [s, k === 0, away];
        });
      });
      // Images have the mirrored region: that of the first says all.
      if (!isFirst) continue;
      owners[nearest].x += x;
      owners[nearest].y += y;
      owners[nearest].count++;
    }
    spreading = spreading.map((slot, s) => {
      const { x, y, count } = owners[s];
      const others = spreading.flatMap((other, k) => (k === s ? [] : [...other.orbit.points]));
      const near = ({ at: [px, py] }: Orbit) => (px - x / count) ** 2 + (py - y / count) ** 2;
      let best = slot.orbit;
      for (const orbit of choices[slot.group].orbits)
        if (
          orbit.points.length === slot.orbit.points.length &&
          near(orbit) < near(best) &&
          orbit.points.every((point) => isClear(at, others, others.length, point, spacing))
        )
          best = orbit;
      return { group: slot.group, orbit: best };
    });
  }
  return spreading;
}
