import { distanceToRing, insideRegion } from '../../geometry/inside.ts';
import type { Point, Region, Ring } from '../../geometry/point.ts';
import { type Extent, extent } from '../../geometry/region.ts';
import type { HeadPlan } from '../../model/compile.ts';
import { type PartEdges, partEdges, partRegions } from '../../model/edge-distance.ts';
import type { Fastener, HeadModel } from '../../model/head-model.ts';
import { distanceOutside, headDiameter, keepOutRing } from '../../model/keep-outs.ts';
import type { Through } from './plan.ts';

/** Where supports may be. */
export interface Room {
  readonly extent: Extent;
  /** Whether a support may stand there, whatever the clearance to the sites. */
  allows(at: Point): boolean;
  /** From the head of a fastener there to the nearest probe field, mm; negative where it covers some. */
  siteGap(at: Point): number;
}

/** Distances that are met within this are met: grids fall on edges. mm */
const ROUNDING = 1e-9;

/**
 * Room for a fastener on a head. Its head, or its bearing if that is larger, lies on one part, clear of the edges of that
 * part; on one face, so not across an edge of body, frame or rib; and clear of every keep-out.
 *
 * @param edge from its rim to edges of the part it goes through, mm
 * @throws Fault BAD_SHAPE with the path in the model
 */
export function headRoom(
  model: HeadModel,
  { parts, siteArea }: HeadPlan,
  like: Fastener,
  edge: number,
  through: Through,
): Room {
  const reach = headDiameter(like) / 2;
  const regions = partRegions(parts, model.frame?.side);
  const steps: Region = [...parts.body, ...parts.frameParts.flatMap(({ region }) => region)];
  const keepOuts = (model.keepOuts ?? []).map(({ shape, clearance = 0 }, i) => ({
    ring: keepOutRing(shape, i),
    clearance,
  }));
  const least = reach + edge - ROUNDING;
  const isThrough = ({ body, frame }: PartEdges): boolean =>
    body >= 0 ? through !== 'frame' && body >= least : through !== 'body' && frame >= least;
  return {
    extent: extent(parts.plate),
    allows: (at) =>
      isThrough(partEdges(regions, at)) &&
      steps.every((ring) => distanceToRing(ring, at[0], at[1]) >= reach - ROUNDING) &&
      keepOuts.every(({ ring, clearance }) => distanceOutside(ring, at) - reach >= clearance - ROUNDING),
    siteGap: (at) => siteArea.reduce((least, ring) => Math.min(least, distanceOutside(ring, at)), Infinity) - reach,
  };
}

/** Room for a support anywhere on a plate, so far from its edges. */
export function plateRoom(plate: Region, edge: number): Room {
  return { extent: extent(plate), allows: (at) => clearInside(plate, at, edge), siteGap: () => Infinity };
}

function clearInside(region: Region, [x, y]: Point, distance: number): boolean {
  return (
    insideRegion(region, x, y) &&
    region.every((ring: Ring) => distance === 0 || distanceToRing(ring, x, y) >= distance - ROUNDING)
  );
}
