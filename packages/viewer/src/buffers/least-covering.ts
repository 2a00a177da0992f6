/** A piece of the page, px. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** So far from a point, and from the edge of the room, px. */
interface Gaps {
  readonly beside: number;
  readonly edge: number;
}

/** Further away it is tried as well, px; and what each px of that may spare of what would be covered, px². */
const FURTHER = [0, 60, 120, 180, 240];
const SPARED = 4;

/**
 * Where a box goes beside a point so that it covers as little as may be of what else is there.
 *
 * Tried to the right, to the left, under and over the point, and in the four corners between, near and then further away;
 * of those that cover the same the first.
 *
 * @returns its upper left corner
 */
export function leastCovering(
  [x, y]: readonly [number, number],
  { width, height }: Pick<Box, 'width' | 'height'>,
  room: Pick<Box, 'width' | 'height'>,
  taken: readonly Box[],
  { beside, edge }: Gaps,
): readonly [left: number, top: number] {
  // The point itself counts as well: a box held by the edge of the room must not lie on it.
  const all = [{ left: x - beside / 2, top: y - beside / 2, width: beside, height: beside }, ...taken];
  let [best, least] = [[x, y] as readonly [number, number], Number.POSITIVE_INFINITY];
  for (const more of FURTHER) {
    // What is further away costs as much as that at least.
    if (least <= SPARED * more) break;
    const away = beside + more;
    const [right, left] = [x + away, x - away - width];
    const [under, over] = [y + away, y - away - height];
    for (const [l, t] of [
      [right, y - height / 2],
      [left, y - height / 2],
      [x - width / 2, under],
      [x - width / 2, over],
      [right, under],
      [left, under],
      [right, over],
      [left, over],
    ]) {
      const box: Box = { left: within(l, width, room.width), top: within(t, height, room.height), width, height };
      const cost = all.reduce((sum, other) => sum + overlapOf(box, other), SPARED * more);
      if (cost < least) [best, least] = [[box.left, box.top], cost];
    }
  }
  return best;

  function within(at: number, size: number, whole: number): number {
    return Math.max(edge, Math.min(at, whole - size - edge));
  }
}

/** Area that two boxes share, px². */
export function overlapOf(a: Box, b: Box): number {
  const along = Math.min(a.left + a.width, b.left + b.width) - Math.max(a.left, b.left);
  const across = Math.min(a.top + a.height, b.top + b.height) - Math.max(a.top, b.top);
  return along > 0 && across > 0 ? along * across : 0;
}
