import { Fault } from '../fault/fault.ts';
import { intersection, union } from '../geometry/boolean.ts';
import { insideRing } from '../geometry/inside.ts';
import type { Point, Region, Ring } from '../geometry/point.ts';
import { area, extent } from '../geometry/region.ts';
import type { Site } from '../layout/site.ts';
import type { Frame, Rib } from './head-model.ts';

/** A rib as it lies on the head, or the ribs of all gaps that one entry of the model stands for. */
export interface PlacedRib {
  /** Clipped to the outer edge of the frame; it reaches into the frame. */
  readonly region: Region;
  readonly thickness: number;
  readonly path: string;
}

/** Overlaps below this area, mm2, are rounding. */
const NOTHING = 1e-9;

/**
 * Ribs of a frame: those between columns or rows in the middle of each gap and right across the window, the others from
 * point to point.
 *
 * @param outer ring of the frame's outer edge
 * @param ring the frame without its ribs
 * @throws Fault OUT_OF_RANGE for a gap that is not there; OUTSIDE for a rib off the frame or not joined to it
 */
export function placeRibs(frame: Frame, outer: Ring, ring: Region, sites: readonly Site[]): PlacedRib[] {
  const { min, max } = extent([outer]);
  const placed = (frame.ribs ?? []).map((rib, i): PlacedRib => {
    const path = `frame.ribs.${i}`;
    const strips = 'between' in rib ? acrossGaps(rib, sites, min, max, path) : [pointToPoint(rib, outer, path)];
    return { region: intersection(strips, [outer]), thickness: rib.thickness ?? frame.thickness, path };
  });
  requireJoined(ring, placed);
  return placed;
}

function acrossGaps(
  { between, width, skip = [] }: Extract<Rib, { between: string }>,
  sites: readonly Site[],
  min: Point,
  max: Point,
  path: string,
): Ring[] {
  const axis = between === 'columns' ? 0 : 1;
  const lines = linesOf(sites, axis);
  const gaps = lines.length - 1;
  if (gaps === 0)
    throw new Fault(
      'OUT_OF_RANGE',
      `The rib of ${path} goes between ${between}, but the head has one only. Remove the rib, or give it "from" and "to".`,
      `${path}.between`,
      { value: between, expected: `two ${between} or more` },
    );
  const beyond = skip.findIndex((gap) => gap > gaps);
  if (beyond >= 0)
    throw new Fault(
      'OUT_OF_RANGE',
      `The rib of ${path} leaves out gap ${skip[beyond]}, but there are ${gaps} gaps between ${between}.`,
      `${path}.skip.${beyond}`,
      { value: skip[beyond], expected: `1 to ${gaps}` },
    );
  return lines.slice(1).flatMap((line, gap): Ring[] => {
    if (skip.includes(gap + 1)) return [];
    const middle = (lines[gap] + line) / 2;
    const [low, high] = [middle - width / 2, middle + width / 2];
    return [axis === 0 ? box(low, min[1], high, max[1]) : box(min[0], low, max[0], high)];
  });
}

/** Places of columns from left to right, or of rows from far to near: the middle of what their sites spread over. */
function linesOf(sites: readonly Site[], axis: 0 | 1): number[] {
  const spread = new Map<number, [number, number]>();
  for (const { row, column, centre } of sites) {
    const line = axis === 0 ? column : row;
    const [low, high] = spread.get(line) ?? [Infinity, -Infinity];
    spread.set(line, [Math.min(low, centre[axis]), Math.max(high, centre[axis])]);
  }
  return [...spread.values()].map(([low, high]) => (low + high) / 2).sort((a, b) => (axis === 0 ? a - b : b - a));
}

function pointToPoint({ from, to, width }: Extract<Rib, { from: unknown }>, outer: Ring, path: string): Ring {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (length === 0)
    throw new Fault('BAD_SHAPE', `The rib of ${path} begins and ends at [${from}]. Move one end.`, `${path}.to`, {
      value: to,
    });
  const [nx, ny] = [(-(to[1] - from[1]) / length) * (width / 2), ((to[0] - from[0]) / length) * (width / 2)];
  for (const end of ['from', 'to'] as const) {
    const [x, y] = end === 'from' ? from : to;
    if (insideRing(outer, x, y)) continue;
    throw new Fault(
      'OUTSIDE',
      `The rib of ${path} ends at [${x}, ${y}], outside the frame. Let it end on the frame.`,
      `${path}.${end}`,
      { value: [x, y], expected: 'a point within frame.outer' },
    );
  }
  return [
    [from[0] - nx, from[1] - ny],
    [to[0] - nx, to[1] - ny],
    [to[0] + nx, to[1] + ny],
    [from[0] + nx, from[1] + ny],
  ];
}

/** Joins ribs to the frame until no more reach it; one that is left hangs in the air. */
function requireJoined(ring: Region, ribs: readonly PlacedRib[]): void {
  const all = ribs.reduce((sum, { region }) => union(sum, region), ring);
  if (parts(all) === 1 && ribs.every(({ region }) => region.length > 0)) return;
  let joined = ring;
  let left = ribs;
  for (;;) {
    const reach = left.filter(({ region }) => region.length > 0 && parts(union(joined, region)) === 1);
    if (reach.length === 0) break;
    joined = reach.reduce((sum, { region }) => union(sum, region), joined);
    left = left.filter((rib) => !reach.includes(rib));
  }
  if (left.length === 0) return;
  throw new Fault(
    'OUTSIDE',
    `The rib of ${left[0].path} does not reach the frame. Let at least one end lie on the frame or on a rib that does.`,
    left[0].path,
    { expected: 'a rib that meets the frame' },
  );
}

/** Pieces of a region: regions that overlap or share an edge become one in a union. */
function parts(region: Region): number {
  return region.filter((ring) => area([ring]) > NOTHING).length;
}

function box(x0: number, y0: number, x1: number, y1: number): Ring {
  return [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ];
}
