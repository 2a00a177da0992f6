import { Fault } from '../fault/fault.ts';
import type { Ring } from '../geometry/point.ts';
import type { Locator } from '../mesh/locate.ts';
import type { Mesh } from '../mesh/mesh.ts';
import { eachOverlap } from './overlap.ts';

/** Elastic foundation under part of the plate, cut along its elements. */
export interface Foundation {
  /** N/mm3: pressure per deflection. */
  readonly modulus: number;
  /** `[nParts]` triangle of each part. */
  readonly triangle: Uint32Array;
  /** `[nParts + 1]` first corner of each part. */
  readonly start: Uint32Array;
  /** `[2 * nCorners]` x, y, counter-clockwise within a part. */
  readonly corner: Float64Array;
}

/**
 * Foundation under the part of the plate inside a ring, or under all of it.
 *
 * @throws Fault OUTSIDE when the ring misses the plate
 */
export function foundationOver(
  mesh: Mesh,
  locator: Locator,
  over: Ring | 'all',
  modulus: number,
  path: string,
): Foundation {
  if (over === 'all') return everywhere(mesh, modulus);
  const triangle: number[] = [];
  const start = [0];
  const corner: number[] = [];
  eachOverlap(mesh, locator, over, (t, polygon, count) => {
    triangle.push(t);
    for (let c = 0; c < 2 * count; c++) corner.push(polygon[c]);
    start.push(corner.length / 2);
  });
  if (triangle.length === 0)
    throw new Fault('OUTSIDE', `The foundation at ${path} lies off the plate. Move it onto the plate.`, path);
  return {
    modulus,
    triangle: Uint32Array.from(triangle),
    start: Uint32Array.from(start),
    corner: Float64Array.from(corner),
  };
}

function everywhere({ x, y, triangles }: Mesh, modulus: number): Foundation {
  const nTriangles = triangles.length / 3;
  const corner = new Float64Array(2 * triangles.length);
  triangles.forEach((node, c) => {
    corner[2 * c] = x[node];
    corner[2 * c + 1] = y[node];
  });
  return {
    modulus,
    triangle: Uint32Array.from({ length: nTriangles }, (_, t) => t),
    start: Uint32Array.from({ length: nTriangles + 1 }, (_, t) => 3 * t),
    corner,
  };
}
