import { addPointWeights, addPolygonWeights, addSegmentWeights, wholeWeights } from '../element/deflection.ts';
import { twiceArea } from '../element/plate-kinematics.ts';
import { Fault } from '../fault/fault.ts';
import type { Point, Ring } from '../geometry/point.ts';
import type { SparseRow } from '../linear-algebra/block-matrix.ts';
import { type Locator, locate } from '../mesh/locate.ts';
import type { Mesh } from '../mesh/mesh.ts';
import { eachOverlap } from './overlap.ts';
import { rowGather } from './row-gather.ts';
import { segmentPieces } from './segment-pieces.ts';

/*
 * Rows over dofs in global axes: what a load, a support or a sample takes from the deflection. One row serves all
 * three, `w = c u` as a sample and `f = F c^T` as a load, so that forces do work on what is measured.
 */

/** Corners of the polygon that stands for a bearing disc of the same area. */
const DISC_CORNERS = 64;

/** Deflection at a point. Its values for w sum to one. @throws Fault OUTSIDE */
export function pointRow(mesh: Mesh, locator: Locator, at: Point, path: string): SparseRow {
  const t = locate(locator, at[0], at[1]);
  if (t < 0) throw off('The point', at, path);
  const gather = rowGather(mesh);
  gather.add(t, (x, y, weights) => addPointWeights(x, y, at[0], at[1], 1, weights));
  return gather.row();
}

/**
 * Average of w over points, each by its share. Its values for w sum to one.
 *
 * @param points x, y and share of each, not all zero; alike where a share is left out
 * @throws Fault OUTSIDE
 */
export function pointsRow(
  mesh: Mesh,
  locator: Locator,
  points: readonly (readonly [number, number, (number | undefined)?])[],
  path: string,
): SparseRow {
  const whole = points.reduce((sum, [, , share = 1]) => sum + share, 0);
  const gather = rowGather(mesh);
  points.forEach(([px, py, share = 1], i) => {
    const t = locate(locator, px, py);
    if (t < 0) throw off('The point', [px, py], `${path}.${i}`);
    gather.add(t, (x, y, weights) => addPointWeights(x, y, px, py, share / whole, weights));
  });
  return gather.row();
}

/** Integral of w over the part of the plate inside a ring, mm2 mm; exact. @throws Fault OUTSIDE when there is none */
export function areaRow(mesh: Mesh, locator: Locator, ring: Ring, path: string): SparseRow {
  const gather = rowGather(mesh);
  eachOverlap(mesh, locator, ring, (t, polygon, count) =>
    gather.add(t, (x, y, weights) => addPolygonWeights(x, y, polygon, count, weights)),
  );
  const row = gather.row();
  if (row.dof.length === 0) throw off('The area', ring[0], path);
  return row;
}

/**
 * Average of w over the part of a bearing disc on the plate. Its values for w sum to one.
 *
 * @param diameter mm; 0 takes the point
 * @throws Fault OUTSIDE when the centre is off the plate
 */
export function discRow(mesh: Mesh, locator: Locator, centre: Point, diameter: number, path: string): SparseRow {
  if (diameter === 0) return pointRow(mesh, locator, centre, path);
  if (locate(locator, centre[0], centre[1]) < 0) throw off('The centre', centre, path);
  return averageRow(mesh, locator, disc(centre, diameter), path);
}

/** Average of w over the part of the plate inside a ring. Its values for w sum to one. @throws Fault OUTSIDE when there is none */
export function averageRow(mesh: Mesh, locator: Locator, ring: Ring, path: string): SparseRow {
  const integral = areaRow(mesh, locator, ring, path);
  const area = spanOf(integral);
  return { dof: integral.dof, value: integral.value.map((v) => v / area) };
}

/** Integral of w along the part of a segment on the plate, mm mm; exact. @throws Fault OUTSIDE when there is none */
export function lineRow(mesh: Mesh, locator: Locator, from: Point, to: Point, path: string): SparseRow {
  const gather = rowGather(mesh);
  for (const { triangle, a, b } of segmentPieces(mesh, locator, from, to))
    gather.add(triangle, (x, y, weights) => addSegmentWeights(x, y, a[0], a[1], b[0], b[1], weights));
  const row = gather.row();
  if (row.dof.length === 0) throw off('The line', from, path);
  return row;
}

/** Integral of w over the whole plate, mm2 mm; exact. */
export function everywhereRow(mesh: Mesh): SparseRow {
  const gather = rowGather(mesh);
  for (let t = 0; t < mesh.region.length; t++)
    gather.add(t, (x, y, weights) => wholeWeights(twiceArea(x, y) / 2, weights));
  return gather.row();
}

/** What a row makes of a unit deflection of the whole plate: 1 for an average, the area or length for an integral. */
export function spanOf({ dof, value }: SparseRow): number {
  let sum = 0;
  for (let k = 0; k < dof.length; k++) if (dof[k] % 3 === 0) sum += value[k];
  return sum;
}

/** Corners of a regular polygon with the area of the disc. */
function disc([cx, cy]: Point, diameter: number): Ring {
  const step = (2 * Math.PI) / DISC_CORNERS;
  const radius = (diameter / 2) * Math.sqrt(step / Math.sin(step));
  return Array.from({ length: DISC_CORNERS }, (_, c) => [
    cx + radius * Math.cos(c * step),
    cy + radius * Math.sin(c * step),
  ]);
}

function off(what: string, [x, y]: Point, path: string): Fault {
  return new Fault(
    'OUTSIDE',
    `${what} at (${x}, ${y}) mm given at ${path} lies off the plate. Move it onto the plate, clear of openings.`,
    path,
    { at: [x, y] },
  );
}
