import Delaunator from 'delaunator';
import { Fault } from '../fault/fault.ts';
import type { Point } from '../geometry/point.ts';
import { centroid } from '../geometry/region.ts';
import { shapeRing } from '../geometry/ring.ts';
import type { HeadModel, Seat } from '../model/head-model.ts';
import type { Wanted } from './column.ts';
import type { FileContent } from './file-text.ts';
import { type ListOptions, readList } from './points-list.ts';
import { coordinate } from './probe-columns.ts';
import { type Dropped, extentsOf, type Reading, type Taken, tidy } from './reading.ts';

/** Measured heights of a board, mm. Plain data. */
export interface HeightMap {
  readonly points: readonly (readonly [x: number, y: number, z: number])[];
}

const WANTED: readonly Wanted[] = [
  coordinate('x'),
  coordinate('y'),
  {
    key: 'z',
    names: ['z', 'height', 'h', 'dz', 'zpos', 'posz', 'deviation', 'elevation'],
    quantity: 'length',
    required: true,
  },
];

/** Places this near, mm, are one measured twice. */
const SAME = 1e-6;
/** Boards are flat to this, mm, and to this where no unit says so: more is a slip of the unit. */
const [TALLEST, USUAL] = [10, 1];

/**
 * Board height map as CSV text or workbook, x, y and z: see the probe list for what of a list may vary.
 *
 * @throws Fault UNREADABLE, USAGE or TOO_LARGE
 */
export function readHeightMap(content: FileContent, options: ListOptions = {}): Reading<HeightMap> {
  const list = readList(content, WANTED, ['x', 'y'], options, 'height map');
  const dropped: Dropped[] = [...list.dropped];
  const seen = new Map<string, number>();
  const points: [number, number, number][] = [];
  for (const { line, numbers } of list.rows) {
    const { x, y, z } = numbers;
    const place = `${Math.round(x / SAME)} ${Math.round(y / SAME)}`;
    const first = seen.get(place);
    if (first === undefined) {
      seen.set(place, line);
      points.push([x, y, z]);
    } else dropped.push({ line, reason: `the height at (${x}, ${y}) mm is on line ${first} already` });
  }
  if (points.length < 3)
    throw new Fault(
      'UNREADABLE',
      `The height map holds ${points.length} points that can be read; a surface needs three or more${dropped.length === 0 ? '' : `. On line ${dropped[0].line} ${dropped[0].reason}`}.`,
      '',
      { line: dropped[0]?.line ?? 1, dropped: dropped.slice(0, 50) },
    );
  const z = points.map((point) => point[2]);
  const range =
    z.reduce((most, value) => Math.max(most, value), -Infinity) - z.reduce((a, b) => Math.min(a, b), Infinity);
  const isSaid = list.found.z?.unit != null || list.units.basis !== 'guessed' || options.heightUnits !== undefined;
  const tallest = isSaid ? TALLEST : USUAL;
  if (range > tallest)
    throw new Fault(
      'UNREADABLE',
      `The heights of the map spread over ${Number(range.toPrecision(4))} mm, more than any board; their unit is probably um. Give the unit in the header, such as "z (um)".`,
      '',
      { value: range, expected: `at most ${tallest}` },
    );
  return {
    read: { points },
    preview: {
      counts: { points: points.length, dropped: dropped.length },
      extents: extentsOf(points.map(([x, y]) => [x, y] as const)),
      layers: [],
      units: list.units,
      guesses: [...list.guesses, `Heights spread over ${Number((1000 * range).toPrecision(4))} um.`],
      dropped: dropped.sort((a, b) => a.line - b.line),
    },
  };
}

/**
 * Head whose fasteners and pads stand at the heights of a map: interpolated linearly over the triangle of measured
 * points around each (their Delaunay triangulation); just outside, as on the nearest edge of the map.
 *
 * @throws Fault OUTSIDE for a fastener or pad further from the map than its points are apart
 */
export function takeHeights(model: HeadModel, map: HeightMap): Taken<HeadModel> {
  const heightAt = surface(map);
  const beyond: string[] = [];
  const height = (what: string, at: Point, path: string): number => {
    const { z, off } = heightAt(at, what, path);
    if (off > SAME)
      beyond.push(`${what} lies ${Number(off.toPrecision(3))} mm outside the map and is given the height of its edge.`);
    return tidy(z);
  };
  return {
    model: {
      ...model,
      fasteners: model.fasteners.map((fastener, i) => ({
        ...fastener,
        height: height(`Fastener ${fastener.name}`, fastener.at, `fasteners.${i}`),
      })),
      ...(model.seats === undefined
        ? {}
        : {
            seats: model.seats.map((seat, i) => ({
              ...seat,
              height: height(`Seat ${seat.name}`, middle(seat), `seats.${i}`),
            })),
          }),
    },
    notes: beyond,
  };
}

function middle(seat: Seat): Point {
  return 'at' in seat ? seat.at : centroid([shapeRing(seat.shape, { chord: 0.01 })]);
}

interface Sampled {
  readonly z: number;
  /** How far outside the map, mm. */
  readonly off: number;
}

function surface({ points }: HeightMap): (at: Point, what: string, path: string) => Sampled {
  const { triangles, hull } = Delaunator.from(
    points as [number, number, number][],
    ([x]) => x,
    ([, y]) => y,
  );
  if (triangles.length === 0)
    throw new Fault(
      'UNREADABLE',
      'The points of the height map lie on one line and make no surface. Add points off it.',
    );
  const box = extentsOf(points.map(([x, y]) => [x, y] as const))!;
  const [width, depth] = [box.max[0] - box.min[0], box.max[1] - box.min[1]];
  const reach = 1.5 * Math.sqrt((width * depth) / points.length);
  return (at, what, path) => {
    for (let t = 0; t < triangles.length; t += 3) {
      const z = within(at, points[triangles[t]], points[triangles[t + 1]], points[triangles[t + 2]]);
      if (z !== null) return { z, off: 0 };
    }
    const nearest = Array.from(hull, (p, i) => onEdge(at, points[p], points[hull[(i + 1) % hull.length]]));
    const best = nearest.reduce((a, b) => (b.off < a.off ? b : a));
    if (best.off <= reach) return best;
    throw new Fault(
      'OUTSIDE',
      `${what} at [${at}] lies ${Number(best.off.toPrecision(3))} mm outside the height map, whose points are about ${Number((reach / 1.5).toPrecision(2))} mm apart. Measure there too, or shift the map to the origin of the head.`,
      path,
      { value: at, distance: best.off, expected: `at most ${reach}` },
    );
  };
}

type XYZ = readonly [number, number, number];

/** Height on a triangle, or null outside of it. */
function within([x, y]: Point, a: XYZ, b: XYZ, c: XYZ): number | null {
  const area = (b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1]);
  const la = ((b[0] - x) * (c[1] - y) - (c[0] - x) * (b[1] - y)) / area;
  const lb = ((c[0] - x) * (a[1] - y) - (a[0] - x) * (c[1] - y)) / area;
  const lc = 1 - la - lb;
  return Math.min(la, lb, lc) < -1e-9 ? null : la * a[2] + lb * b[2] + lc * c[2];
}

function onEdge([x, y]: Point, a: XYZ, b: XYZ): Sampled {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const s = Math.min(1, Math.max(0, ((x - a[0]) * dx + (y - a[1]) * dy) / (dx * dx + dy * dy)));
  return { z: a[2] + s * (b[2] - a[2]), off: Math.hypot(x - a[0] - s * dx, y - a[1] - s * dy) };
}
