import type { Point } from '../../geometry/point.ts';
import type { Orbit } from './orbits.ts';

/** Orbits that a group of fasteners is chosen from. */
export interface Choice {
  readonly orbits: readonly Orbit[];
  /** Fasteners of the group. */
  readonly count: number;
}

/** How many ways there are to fill the groups, whatever their spacing. A number beyond 2^53 is not exact. */
export function waysToChoose(choices: readonly Choice[]): number {
  return choices.reduce((product, { orbits, count }) => {
    // ways[n] = sets of the orbits so far with n positions.
    const ways = new Float64Array(count + 1);
    ways[0] = 1;
    for (const { points } of orbits) for (let n = count; n >= points.length; n--) ways[n] += ways[n - points.length];
    return product * ways[count];
  }, 1);
}

/**
 * Every way to fill the groups that keeps the spacing, one at a time; `null` after the last. The array is used again.
 *
 * @param at of each candidate
 */
export function enumeration(
  choices: readonly Choice[],
  at: readonly Point[],
  spacing: number,
): () => Uint32Array | null {
  const total = choices.reduce((sum, { count }) => sum + count, 0);
  const chosen = new Uint32Array(total);
  let filled = 0;
  /** One frame for each orbit chosen: which group, the orbit to try next, positions that the group still lacks. */
  const frames = [{ group: 0, next: 0, left: choices[0].count, added: 0 }];
  return () => {
    while (frames.length > 0) {
      const frame = frames[frames.length - 1];
      filled -= frame.added;
      frame.added = 0;
      const { orbits } = choices[frame.group];
      while (frame.next < orbits.length && !fits(orbits[frame.next].points, frame.left)) frame.next++;
      if (frame.next === orbits.length) {
        frames.pop();
        continue;
      }
      const { points } = orbits[frame.next++];
      for (const point of points) chosen[filled++] = point;
      frame.added = points.length;
      const left = frame.left - points.length;
      if (left > 0) frames.push({ group: frame.group, next: frame.next, left, added: 0 });
      else if (frame.group + 1 < choices.length)
        frames.push({ group: frame.group + 1, next: 0, left: choices[frame.group + 1].count, added: 0 });
      else return chosen;
    }
    return null;
  };

  function fits(points: readonly number[], left: number): boolean {
    if (points.length > left) return false;
    for (const point of points) if (!isClear(at, chosen, filled, point, spacing)) return false;
    return true;
  }
}

/** Whether a candidate keeps the spacing from the first `count` of those chosen. */
export function isClear(
  at: readonly Point[],
  chosen: ArrayLike<number>,
  count: number,
  point: number,
  spacing: number,
): boolean {
  const [x, y] = at[point];
  const least = (spacing - 1e-9) ** 2;
  for (let i = 0; i < count; i++) {
    const [px, py] = at[chosen[i]];
    if ((x - px) ** 2 + (y - py) ** 2 < least) return false;
  }
  return true;
}

/** Sizes of orbits that make up a group, largest first: all the ways that the orbits there are allow. */
export function compositions({ orbits, count }: Choice): number[][] {
  const sizes = [...new Set(orbits.map(({ points }) => points.length))].sort((a, b) => b - a);
  const made: number[][] = [];
  const extend = (sofar: number[], from: number, left: number): void => {
    if (left === 0) made.push(sofar);
    for (let s = from; s < sizes.length; s++) if (sizes[s] <= left) extend([...sofar, sizes[s]], s, left - sizes[s]);
  };
  extend([], 0, count);
  return made.filter((parts) =>
    sizes.every(
      (size) =>
        parts.filter((part) => part === size).length <= orbits.filter(({ points }) => points.length === size).length,
    ),
  );
}
