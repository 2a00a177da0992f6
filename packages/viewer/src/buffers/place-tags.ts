import { type Box, overlapOf } from './least-covering.ts';

/** A text that stands beside a point, px. */
export interface Tag {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  /** Of what is drawn at its point. */
  readonly radius: number;
  /** Those with more choose first. */
  readonly weight: number;
  /** Shown whatever it covers but {@link Obstacles.never}; the others go where all is free, or not at all. */
  readonly kept: boolean;
  /** Place it had, as {@link placeTags} told it; it leaves that only when it is taken or a nearer one is free. */
  readonly place: number;
}

interface Obstacles {
  /** Covered by no text while there is any other place. */
  readonly never: readonly Box[];
  /** Covered by no text that may be left out. */
  readonly taken: readonly Box[];
  readonly room: Pick<Box, 'width' | 'height'>;
  /** What texts are pushed away from. */
  readonly centre: readonly [x: number, y: number];
}

export interface PlacedTag {
  /** Which of the places; -1 = left out. */
  readonly place: number;
  /** Its middle from its point, px. */
  readonly dx: number;
  readonly dy: number;
  /** Whether it is so far off that a line should lead to it. */
  readonly led: boolean;
}

const LEFT_OUT: PlacedTag = { place: -1, dx: 0, dy: 0, led: false };
/** What a screw's head reaches under its middle, over its radius: it is seen from the side. */
export const UNDER = 1.5;
/** From the edge of the room, and from what is drawn at the point to a text that touches it, px. */
const EDGE = 6;
const NEAR = { above: 2, least: 10, beside: 5 };
/** From there to texts that are pushed away, px, each in all directions: from outwards by turns to the sides. */
const RINGS = [14, 32, 54, 80, 112];
const TURNS = [0, 0.6, -0.6, 1.2, -1.2, 1.9, -1.9, Math.PI];
/** Above, under, right and left of the point. */
const TOUCHING = 4;
const PLACES = TOUCHING + RINGS.length * TURNS.length;
/** Covering what never is to be counts so many times as much. */
const NEVER = 1000;

/**
 * Where texts go beside their points so that none lies on another or on what is there: touching their points, above first,
 * or pushed outwards with a line that leads to them.
 */
export function placeTags(tags: readonly Tag[], { never, taken, room, centre }: Obstacles): PlacedTag[] {
  const placed = tags.map(() => LEFT_OUT);
  const texts: Box[] = [];
  const order = tags.map((_, i) => i).sort((a, b) => tags[b].weight - tags[a].weight);
  for (const i of order) {
    const tag = tags[i];
    const outwards = Math.atan2(tag.y - centre[1], tag.x - centre[0] || 1e-9);
    const cost = (place: number): number => {
      placeOf(tag, place, outwards, room);
      if (!tag.kept && at.clamped) return Number.POSITIVE_INFINITY;
      at.left = tag.x + at.dx - tag.width / 2;
      at.top = tag.y + at.dy - tag.height / 2;
      at.width = tag.width;
      at.height = tag.height;
      return NEVER * covered(never) + covered(taken) + covered(texts);
    };
    let best = -1;
    let least = tag.kept ? Number.POSITIVE_INFINITY : 1e-9;
    let held = ringOf(tag.place);
    for (let place = 0; place < PLACES && least > 0; place++) {
      // The place it had comes before the others as far off.
      for (const tried of ringOf(place) === held ? [tag.place, place] : [place]) {
        const now = cost(tried);
        if (now < least) [best, least] = [tried, now];
      }
      if (ringOf(place) === held) held = -1;
    }
    if (best === -1) continue;
    cost(best);
    texts.push({ left: at.left, top: at.top, width: at.width, height: at.height });
    placed[i] = { place: best, dx: at.dx, dy: at.dy, led: best >= TOUCHING };
  }
  return placed;
}

/** The place that is tried: one for all, since a drag tries many in each frame. */
const at = { dx: 0, dy: 0, clamped: false, left: 0, top: 0, width: 0, height: 0 };

function placeOf(tag: Tag, place: number, outwards: number, room: Pick<Box, 'width' | 'height'>): void {
  const { width, height, radius } = tag;
  const over = Math.max(NEAR.least, radius + NEAR.above);
  const gap = place === 1 ? Math.max(NEAR.least, UNDER * radius + NEAR.above) : over;
  if (place < TOUCHING) {
    at.dx = place < 2 ? 0 : (place === 2 ? 1 : -1) * (gap + NEAR.beside + width / 2);
    at.dy = place > 1 ? 0 : (place === 0 ? -1 : 1) * (gap + height / 2);
  } else {
    const angle = outwards + TURNS[(place - TOUCHING) % TURNS.length];
    const away = gap + RINGS[Math.floor((place - TOUCHING) / TURNS.length)];
    at.dx = Math.cos(angle) * (away + width / 2);
    at.dy = Math.sin(angle) * (away + height / 2);
  }
  const dx = within(tag.x + at.dx, width, room.width) - tag.x;
  const dy = within(tag.y + at.dy, height, room.height) - tag.y;
  at.clamped = Math.abs(dx - at.dx) + Math.abs(dy - at.dy) > 1e-6;
  at.dx = dx;
  at.dy = dy;
}

function ringOf(place: number): number {
  return place < TOUCHING ? Math.min(place, 0) : 1 + Math.floor((place - TOUCHING) / TURNS.length);
}

/** Middle of a text that stays in the room. */
function within(middle: number, size: number, whole: number): number {
  return Math.max(EDGE + size / 2, Math.min(middle, whole - EDGE - size / 2));
}

function covered(others: readonly Box[]): number {
  let sum = 0;
  for (const other of others) sum += overlapOf(at, other);
  return sum;
}
