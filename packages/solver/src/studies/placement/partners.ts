import type { Point } from '../../geometry/point.ts';
import { images } from './orbits.ts';
import type { Mirror } from './plan.ts';

/** Places this close to a mirrored one are its image, mm. */
const NEAR = 0.05;

/**
 * Places in sets that mirror each other, each set complete; a place without all of its images is a set of its own.
 *
 * @returns indices into `places`, sets of one, two or four, those far up first and from left to right
 */
export function partnerSets(places: readonly Point[], mirror: Mirror, about: Point): number[][] {
  const order = places.map((_, i) => i).sort((a, b) => places[b][1] - places[a][1] || places[a][0] - places[b][0]);
  const left = new Set(order);
  const sets: number[][] = [];
  for (const first of order) {
    if (!left.has(first)) continue;
    const found = images(places[first], mirror, about).map((image) =>
      order.find((i) => left.has(i) && isNear(i, image)),
    );
    const whole = found.every((i) => i !== undefined) ? [...new Set(found)].sort(byOrder) : [first];
    for (const i of whole) left.delete(i);
    sets.push(whole);
  }
  return sets;

  function isNear(i: number, [x, y]: Point): boolean {
    return Math.hypot(places[i][0] - x, places[i][1] - y) <= NEAR;
  }
  function byOrder(a: number, b: number): number {
    return order.indexOf(a) - order.indexOf(b);
  }
}
