import type { HeadModel, Point } from '@flathead/solver';

/** Fasteners this close to a mirrored place count as its partner, mm. */
const PARTNER = 0.5;
/** Within this distance of a symmetry line a linked fastener stays on it, mm. */
const ON_LINE = 0.5;
/** So far off its line what lies on one has to be pulled to leave it, mm. */
export const LEAVE_LINE = 2;

export type Sign = 1 | -1;
/** Signs of x and y of a mirrored place about the centre. */
export type Signs = readonly [Sign, Sign];
/** Across which lines things move along: left and right (x), near and far (y), or both. */
export type MirrorAxes = 'x' | 'y' | 'both';

const SIGNS: Readonly<Record<MirrorAxes, readonly Signs[]>> = {
  x: [[-1, 1]],
  y: [[1, -1]],
  both: [
    [-1, 1],
    [1, -1],
    [-1, -1],
  ],
};

/** What is chosen on the page: lines to mirror across, or none whatever the head looks like. */
export type MirrorChoice = MirrorAxes | 'off';

/** Across which lines a pattern of fasteners is its own image, within 0.5 mm; `null` = none. @param places mm */
export function symmetricAxes(places: readonly Point[], centre: Point): MirrorAxes | null {
  const isImage = (signs: Signs): boolean =>
    places.every((place) => {
      const [x, y] = mirrored(place, signs, centre);
      return places.some((other) => Math.hypot(other[0] - x, other[1] - y) <= PARTNER);
    });
  const [x, y] = [isImage([-1, 1]), isImage([1, -1])];
  return x && y ? 'both' : x ? 'x' : y ? 'y' : null;
}

/** The lines that moves are mirrored across: those chosen, else those of the pattern; `null` = none. */
export function mirrorAxesOf(
  chosen: MirrorChoice | null,
  { fasteners, sites: { origin = [0, 0] } }: Pick<HeadModel, 'fasteners' | 'sites'>,
): MirrorAxes | null {
  if (chosen !== null) return chosen === 'off' ? null : chosen;
  return symmetricAxes(
    fasteners.map(({ at }) => at),
    origin,
  );
}

/** The mirror images that are linked; none without a link. */
export function linkedSigns(axes: MirrorAxes | null): readonly Signs[] {
  return axes === null ? [] : SIGNS[axes];
}

/** A point mirrored about the centre. */
export function mirrored([x, y]: Point, [sx, sy]: Signs, [cx, cy]: Point): Point {
  return [cx + sx * (x - cx), cy + sy * (y - cy)];
}

/** A fastener that moves with the dragged one, and how. */
export interface Partner {
  readonly index: number;
  /** Its place is that of the dragged one with these signs about the centre. */
  readonly sign: Signs;
}

export interface MirrorLink {
  readonly index: number;
  readonly centre: Point;
  readonly partners: readonly Partner[];
  /** Symmetry lines that the dragged fastener sits on: x = centre, y = centre. */
  readonly onLine: readonly [boolean, boolean];
}

/**
 * What moves along with a fastener: those opposite it across the lines asked for, and the centre where both are, each
 * within 0.5 mm.
 *
 * @param places all fasteners, mm
 */
export function mirrorLink(
  places: readonly Point[],
  index: number,
  centre: Point,
  axes: MirrorAxes = 'both',
): MirrorLink {
  const [dx, dy] = [places[index][0] - centre[0], places[index][1] - centre[1]];
  const partners: Partner[] = [];
  for (const sign of SIGNS[axes]) {
    let best = -1;
    let least = PARTNER;
    places.forEach(([x, y], other) => {
      const taken = other === index || partners.some((partner) => partner.index === other);
      const distance = Math.hypot(x - centre[0] - sign[0] * dx, y - centre[1] - sign[1] * dy);
      if (taken || distance > least) return;
      best = other;
      least = distance;
    });
    if (best >= 0) partners.push({ index: best, sign });
  }
  return {
    index,
    centre,
    partners,
    onLine: [axes !== 'y' && Math.abs(dx) <= ON_LINE, axes !== 'x' && Math.abs(dy) <= ON_LINE],
  };
}

/** No partner: the fastener moves alone. */
export function unlinked(index: number): MirrorLink {
  return { index, centre: [0, 0], partners: [], onLine: [false, false] };
}

/** Where the fasteners of a link go when the dragged one is pulled to a point: `[index, place]` each. */
export function linkedPlaces(link: MirrorLink, to: Point): readonly (readonly [number, Point])[] {
  const { centre, onLine } = link;
  const held = ([0, 1] as const).map((axis) =>
    onLine[axis] && Math.abs(to[axis] - centre[axis]) < LEAVE_LINE ? centre[axis] : to[axis],
  );
  const place = (sign: Signs): Point => mirrored([held[0], held[1]], sign, centre);
  return [[link.index, place([1, 1])], ...link.partners.map(({ index, sign }) => [index, place(sign)] as const)];
}
