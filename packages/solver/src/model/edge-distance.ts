import { union } from '../geometry/boolean.ts';
import { distanceToRing, insideRegion } from '../geometry/inside.ts';
import type { Point, Region } from '../geometry/point.ts';
import type { Frame } from './head-model.ts';
import type { HeadParts } from './parts.ts';
import type { PartName } from './zones.ts';

/** The parts of a head in plan, for distances to their edges. */
export interface PartRegions {
  /** Body with its openings cut. */
  readonly body: Region;
  /** Frame with its ribs; empty when there is none. Steps of thickness are no edges. */
  readonly frame: Region;
  /** The part nearer to the device, which screw heads sit on, where body and frame lie on each other. */
  readonly upper: PartName;
}

/** Where a point stands on a head. */
export interface PartEdges {
  /** Distance to the nearest edge of the body or of an opening in it, mm: positive on the body, negative off it. */
  readonly body: number;
  /** The same of the frame with its ribs; minus infinity without a frame. */
  readonly frame: number;
  /** The part that a screw head sits on there; `null` off the head. */
  readonly upper: PartName | null;
}

/** @param side of the frame; without a frame it does not matter */
export function partRegions({ body, frameParts }: HeadParts, side: Frame['side'] = 'board'): PartRegions {
  const [first, ...others] = frameParts.map(({ region }) => region);
  const frame = others.reduce((sum: Region, region) => union(sum, region), first ?? []);
  return { body, frame, upper: side === 'board' ? 'body' : 'frame' };
}

/** Which parts of a head a point lies on, and how far from their edges. */
export function partEdges({ body, frame, upper }: PartRegions, at: Point): PartEdges {
  const distances = { body: depthIn(body, at), frame: depthIn(frame, at) };
  const order: readonly PartName[] = upper === 'body' ? ['body', 'frame'] : ['frame', 'body'];
  return { ...distances, upper: order.find((part) => distances[part] >= 0) ?? null };
}

/** Distance of a point from the boundary of a region, mm: positive inside, negative outside. */
function depthIn(region: Region, [x, y]: Point): number {
  const distance = Math.min(...region.map((ring) => distanceToRing(ring, x, y)));
  return insideRegion(region, x, y) ? distance : -distance;
}
