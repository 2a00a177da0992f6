import type { Point } from '../geometry/point.ts';
import { extent, perimeter, ringArea } from '../geometry/region.ts';
import type { MeshDomain } from './domain.ts';
import type { SizeField } from './size-field.ts';

/**
 * Segments of an arrangement while it is being built; vertices and segments are numbered as they come.
 *
 * A segment knows what it bounds: `bounds[s]` alternates ring and turn, where ring 0 is the outline and r + 1 region r,
 * and turn is what the winding number of that ring gains from the right of `from -> to` to its left.
 */
export interface Web {
  readonly x: number[];
  readonly y: number[];
  /** Vertices of the outline stay where they are; others may move by their tolerance. */
  readonly fixed: boolean[];
  readonly tolerance: number[];
  from: number[];
  to: number[];
  bounds: (readonly number[])[];
  /** Whether the segment is part of the outline. */
  outline: boolean[];
  /** Vertices that become nodes though no segment may end there. */
  points: number[];
  /** Vertices of the outline closer than this are one. */
  readonly least: number;
  readonly min: Point;
  readonly max: Point;
}

/** Vertices closer than this over the extent of the plate are one. */
const SAME = 1e-7;
/** A region is never moved by more than this share of its own width. */
const WIDTH_SHARE = 0.02;

/**
 * All rings of the domain as loose segments.
 *
 * @param tolerance how far a region may move to meet what is beside it, mm at a point
 */
export function looseWeb(domain: MeshDomain, tolerance: SizeField): Web {
  const { min, max } = extent(domain.outline);
  const least = SAME * Math.max(max[0] - min[0], max[1] - min[1]);
  const web: Web = {
    x: [],
    y: [],
    fixed: [],
    tolerance: [],
    from: [],
    to: [],
    bounds: [],
    outline: [],
    points: [],
    least,
    min,
    max,
  };
  for (const ring of domain.outline) addRing(web, ring, 0, () => least);
  domain.regions.forEach((ring, r) => {
    const own = extent([ring]);
    const apart = own.min[0] > max[0] || own.min[1] > max[1] || own.max[0] < min[0] || own.max[1] < min[1];
    if (apart) return;
    const most = (WIDTH_SHARE * 2 * Math.abs(ringArea(ring))) / perimeter(ring);
    addRing(web, ring, r + 1, (x, y) => Math.max(least, Math.min(most, tolerance(x, y))));
  });
  for (const [x, y] of domain.points ?? []) web.points.push(addVertex(web, x, y, false, least));
  return web;
}

export function addVertex(web: Web, x: number, y: number, fixed: boolean, tolerance: number): number {
  web.x.push(x);
  web.y.push(y);
  web.fixed.push(fixed);
  web.tolerance.push(tolerance);
  return web.x.length - 1;
}

function addRing(web: Web, ring: readonly Point[], id: number, tolerance: SizeField): void {
  const first = web.x.length;
  ring.forEach(([x, y], i) => {
    addVertex(web, x, y, id === 0, tolerance(x, y));
    web.from.push(first + i);
    web.to.push(first + ((i + 1) % ring.length));
    web.bounds.push([id, 1]);
    web.outline.push(id === 0);
  });
}

/** Replaces every segment that has stops by the pieces between them. `stops[s]` holds vertices in order from `from`. */
export function splitSegments(web: Web, stops: ReadonlyMap<number, readonly number[]>): void {
  const { from, to, bounds, outline } = web;
  const pieces = {
    from: [] as number[],
    to: [] as number[],
    bounds: [] as (readonly number[])[],
    outline: [] as boolean[],
  };
  for (let s = 0; s < from.length; s++) {
    const chain = [from[s], ...(stops.get(s) ?? []), to[s]];
    for (let i = 1; i < chain.length; i++) {
      pieces.from.push(chain[i - 1]);
      pieces.to.push(chain[i]);
      pieces.bounds.push(bounds[s]);
      pieces.outline.push(outline[s]);
    }
  }
  Object.assign(web, pieces);
}

/** Drops segments without length and joins those between the same vertices; what bounds nothing any more goes too. */
export function joinDuplicates(web: Web): void {
  const { from, to, bounds, outline } = web;
  const order = from.map((_, s) => s).filter((s) => from[s] !== to[s]);
  const low = (s: number) => Math.min(from[s], to[s]);
  const high = (s: number) => Math.max(from[s], to[s]);
  order.sort((a, b) => low(a) - low(b) || high(a) - high(b) || a - b);
  const joined = {
    from: [] as number[],
    to: [] as number[],
    bounds: [] as (readonly number[])[],
    outline: [] as boolean[],
  };
  for (let i = 0; i < order.length; ) {
    const s = order[i];
    let end = i + 1;
    while (end < order.length && low(order[end]) === low(s) && high(order[end]) === high(s)) end++;
    const sum = end === i + 1 ? bounds[s] : sumOfBounds(order.slice(i, end), web);
    if (sum.length > 0) {
      joined.from.push(from[s]);
      joined.to.push(to[s]);
      joined.bounds.push(sum);
      joined.outline.push(order.slice(i, end).some((t) => outline[t]));
    }
    i = end;
  }
  Object.assign(web, joined);
}

function sumOfBounds(segments: readonly number[], { from, bounds }: Web): readonly number[] {
  const turns = new Map<number, number>();
  for (const s of segments) {
    const sense = from[s] === from[segments[0]] ? 1 : -1;
    for (let i = 0; i < bounds[s].length; i += 2) {
      const ring = bounds[s][i];
      turns.set(ring, (turns.get(ring) ?? 0) + sense * bounds[s][i + 1]);
    }
  }
  return [...turns].filter(([, turn]) => turn !== 0).flat();
}
