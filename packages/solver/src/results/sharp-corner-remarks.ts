import type { Point, Ring } from '../geometry/point.ts';
import { ringArea } from '../geometry/region.ts';
import { shapeRing } from '../geometry/ring.ts';
import type { Shape } from '../geometry/shape.ts';
import type { HeadModel } from '../model/head-model.ts';
import { materialsOf } from './strength-setting.ts';

/** Turns of less than this, degrees, are chords of a curve rather than corners. */
const SMOOTH = 40;

/**
 * Parts that are judged by their stress and have sharp inner corners, one sentence each: there the stress of an elastic
 * plate has no largest value but grows as `r^(lambda - 1)`, lambda < 1 (Williams 1952, J. Appl. Mech. 19; memory), and
 * what a mesh reads says how fine it is.
 */
export function sharpCornerRemarks(model: HeadModel): string[] {
  const { body, frame, limits } = model;
  if (limits.strengthFactor === undefined && limits.failureProbability === undefined) return [];
  return materialsOf(model).flatMap(({ part, material }) => {
    if (material.strength === undefined) return [];
    const [outline, openings] = part === 'body' ? [body.outline, body.openings ?? []] : [frame!.outer, [frame!.window]];
    const corners = [...innerCorners(outline, 1), ...openings.flatMap((shape) => innerCorners(shape, -1))];
    if (corners.length === 0) return [];
    const [x, y] = corners[0].map((value) => Number(value.toFixed(2)));
    const [has, rest] =
      corners.length === 1 ? ['a sharp inner corner', ''] : [`${corners.length} sharp inner corners`, ' and others'];
    return [
      `The ${part} has ${has}, at (${x}, ${y})${rest}: stress at such a corner grows without limit as the mesh becomes finer, and strength read there is too high. Draw the radius that it is made with.`,
    ];
  });
}

/** @param side 1 for an outline, which the part lies inside of; -1 for an opening */
function innerCorners(shape: Shape, side: 1 | -1): Point[] {
  const ring = shapeRing(shape, { chord: 1e-3 });
  const way = side * Math.sign(ringArea(ring));
  return ring.filter((_, i) => way * turnAt(ring, i) < -SMOOTH);
}

/** By how much a ring turns to the left at a corner, degrees. */
function turnAt(ring: Ring, i: number): number {
  const [[ax, ay], [x, y], [bx, by]] = [ring.at(i - 1)!, ring[i], ring[(i + 1) % ring.length]];
  const [ux, uy, vx, vy] = [x - ax, y - ay, bx - x, by - y];
  return (Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy) * 180) / Math.PI;
}
