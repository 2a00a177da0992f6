import type { Point } from '../geometry/point.ts';
import type { HeadModel } from '../model/head-model.ts';

/** Fasteners that are mirror images of the first of them, itself included. */
export type MirrorSet = readonly {
  readonly index: number;
  /** Signs of a step of this one over that of the first, along x and y. */
  readonly sign: readonly [x: 1 | -1, y: 1 | -1];
  /** Whether it lies on the mirror line that crosses x, and y. */
  readonly onLine: readonly [x: boolean, y: boolean];
}[];

/** Fasteners this close to a mirrored place belong together, mm. */
const PARTNER = 0.5;

/**
 * Fasteners in sets that mirror each other across two lines along x and y. The lines cross where most fasteners have a
 * partner: in the middle of the sites, of all fasteners, or in the origin.
 *
 * @param siteMiddle middle of the site area
 */
export function mirrorSets({ fasteners }: HeadModel, siteMiddle: Point): MirrorSet[] {
  const places = fasteners.map(({ at }) => at);
  const middle = (axis: 0 | 1): number => {
    const along = places.map((at) => at[axis]);
    const spread = (Math.min(...along) + Math.max(...along)) / 2;
    const lines = [siteMiddle[axis], spread, 0];
    const most = Math.max(...lines.map((line) => partners(places, axis, line)));
    return lines.find((line) => partners(places, axis, line) === most) ?? siteMiddle[axis];
  };
  return setsAbout(places, [middle(0), middle(1)]);
}

/** How many have another, or themselves, where their mirror image is. */
function partners(places: readonly Point[], axis: 0 | 1, line: number): number {
  return places.filter((at) => {
    const image: Point = axis === 0 ? [2 * line - at[0], at[1]] : [at[0], 2 * line - at[1]];
    return places.some((other) => Math.hypot(other[0] - image[0], other[1] - image[1]) <= PARTNER);
  }).length;
}

function setsAbout(places: readonly Point[], centre: Point): MirrorSet[] {
  const sets: MirrorSet[number][][] = [];
  const offset = (index: number, axis: 0 | 1): number => places[index][axis] - centre[axis];
  places.forEach((_, index) => {
    const mine = sets.find(
      ([{ index: first }]) =>
        Math.hypot(
          Math.abs(offset(first, 0)) - Math.abs(offset(index, 0)),
          Math.abs(offset(first, 1)) - Math.abs(offset(index, 1)),
        ) <= PARTNER,
    );
    const first = mine === undefined ? index : mine[0].index;
    const sign = (axis: 0 | 1): 1 | -1 => (offset(index, axis) * offset(first, axis) < 0 ? -1 : 1);
    const onLine = (axis: 0 | 1): boolean => Math.abs(offset(index, axis)) <= PARTNER;
    const member = { index, sign: [sign(0), sign(1)], onLine: [onLine(0), onLine(1)] } as const;
    if (mine === undefined) sets.push([member]);
    else mine.push(member);
  });
  return sets;
}
