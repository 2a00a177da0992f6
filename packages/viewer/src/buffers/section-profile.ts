import type { Mesh, Point, Site } from '@flathead/solver';
import { fieldSampler } from './field-sampler.ts';

/** A straight cut through the head in plan, mm. */
export interface SectionLine {
  readonly from: Point;
  readonly to: Point;
}

/** Deviation along a line. */
export interface SectionProfile {
  /** `[n]` distance from the start of the line, mm, ascending. */
  readonly s: Float64Array;
  /** `[n]` deviation from the fastener plane, um; NaN where the line is off the head. */
  readonly um: Float64Array;
}

/** Where a line lies in the probe field of a site, by the distance from its start, mm. */
export interface SiteExtent {
  readonly name: string;
  readonly from: number;
  readonly to: number;
}

/** Distance of the samples, mm, and their number at least and at most. */
const STEP = 0.25;
const FEWEST = 120;
const MOST = 1200;

export function lengthOf({ from, to }: SectionLine): number {
  return Math.hypot(to[0] - from[0], to[1] - from[1]);
}

/** Point of a line at a distance from its start. */
export function pointAlong(line: SectionLine, s: number): Point {
  const { from, to } = line;
  const share = s / (lengthOf(line) || 1);
  return [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])];
}

/**
 * Deviation along a line through a solved head, linear within each triangle of the mesh as the stage draws it.
 *
 * @param deviation `[nNodes]` of a case, mm
 */
export function sectionProfile(mesh: Mesh, deviation: Float64Array, line: SectionLine): SectionProfile {
  const sampler = fieldSampler(mesh, deviation);
  const length = lengthOf(line);
  const n = Math.min(MOST, Math.max(FEWEST, Math.ceil(length / STEP))) + 1;
  const s = Float64Array.from({ length: n }, (_, i) => (i / (n - 1)) * length);
  const um = s.map((at) => {
    const [x, y] = pointAlong(line, at);
    return (sampler.at(x, y) ?? Number.NaN) * 1000;
  });
  return { s, um };
}

/** Value of a profile at a distance, um, between samples linear; NaN off the line or the head. */
export function profileAt({ s, um }: SectionProfile, at: number): number {
  const last = s.length - 1;
  if (last < 1 || !(at >= s[0] && at <= s[last])) return Number.NaN;
  const i = Math.min(last - 1, Math.floor((at / s[last]) * last));
  const share = (at - s[i]) / (s[i + 1] - s[i]);
  if (share === 0) return um[i];
  return share === 1 ? um[i + 1] : um[i] + share * (um[i + 1] - um[i]);
}

/** The sites that a line crosses, in its order: the line clipped to each probe field, side by side of the box. */
export function siteExtents(sites: readonly Site[], line: SectionLine): SiteExtent[] {
  const length = lengthOf(line);
  return sites
    .flatMap(({ name, centre, field }): SiteExtent[] => {
      let [from, to] = [0, 1];
      for (const axis of [0, 1] as const) {
        const start = line.from[axis] - centre[axis];
        const run = line.to[axis] - line.from[axis];
        const half = field[axis] / 2;
        if (Math.abs(run) < 1e-9 * length) {
          if (Math.abs(start) > half) return [];
          continue;
        }
        const [a, b] = [(-half - start) / run, (half - start) / run];
        from = Math.max(from, Math.min(a, b));
        to = Math.min(to, Math.max(a, b));
      }
      return to > from ? [{ name, from: from * length, to: to * length }] : [];
    })
    .sort((a, b) => a.from - b.from);
}

/** The row of a site from edge to edge of the head, +x; the line that a section starts with. */
export function rowSection({ x }: Mesh, sites: readonly Site[], name: string): SectionLine {
  const y = (sites.find((site) => site.name === name) ?? sites[0]).centre[1];
  let [low, high] = [Infinity, -Infinity];
  for (const at of x) {
    low = Math.min(low, at);
    high = Math.max(high, at);
  }
  return { from: [low, y], to: [high, y] };
}

/** The point moved onto the middle of a row or column of sites where it is nearer than `reach`, mm. */
export function onRowsAndColumns(sites: readonly Site[], point: Point, reach: number): Point {
  const snap = (axis: 0 | 1): number => {
    const nearest = sites.reduce(
      (best, { centre }) => (Math.abs(centre[axis] - point[axis]) < Math.abs(best - point[axis]) ? centre[axis] : best),
      Infinity,
    );
    return Math.abs(nearest - point[axis]) <= reach ? nearest : point[axis];
  };
  return [snap(0), snap(1)];
}
