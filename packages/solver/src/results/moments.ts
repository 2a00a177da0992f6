import { triangleCorners } from '../assembly/triangle-corners.ts';
import { plateCurvature } from '../element/plate-triangle.ts';
import { Fault } from '../fault/fault.ts';
import type { Point } from '../geometry/point.ts';
import { barycentric, type Locator, locate } from '../mesh/locate.ts';
import type { Mesh } from '../mesh/mesh.ts';
import type { Rigidity } from '../section/rigidity.ts';

/** Moments per unit length, N. */
export interface Moments {
  readonly mxx: number;
  readonly myy: number;
  readonly mxy: number;
}

/**
 * Smoothed moments at the corners of every triangle: at each node the mean over the triangles around it with the same
 * section, weighted by area. Never averaged across sections, where moments along the interface truly jump.
 *
 * Errors fall with h at edges and with h^2 inside; a fit to centroid values over patches of triangles was tried and is
 * coarser at clamped edges by a factor of two to six.
 *
 * @param mesh its `region` indexes `rigidities` and `freeCurvature`
 * @param u `[3 * nNodes]` global dofs
 * @param freeCurvature curvature of each section that costs no moment, 1/mm, as from a temperature gradient
 * @returns `[9 * nTriangles]`: mxx, myy, mxy at each corner of each triangle
 */
export function nodalMoments(
  mesh: Pick<Mesh, 'x' | 'y' | 'triangles' | 'region'>,
  rigidities: readonly Rigidity[],
  theory: 'thin' | 'shear',
  u: Float64Array,
  freeCurvature?: ArrayLike<number>,
): Float64Array {
  return smoothedMoments(mesh, cornerMoments(mesh, rigidities, theory, u, freeCurvature));
}

/** Moments of each element at its own corners, `[9 * nTriangles]`; arguments as those of {@link nodalMoments}. */
export function cornerMoments(
  mesh: Pick<Mesh, 'x' | 'y' | 'triangles' | 'region'>,
  rigidities: readonly Rigidity[],
  theory: 'thin' | 'shear',
  u: Float64Array,
  freeCurvature?: ArrayLike<number>,
): Float64Array {
  const { triangles, region } = mesh;
  const own = new Float64Array(9 * region.length);
  const x = new Float64Array(3);
  const y = new Float64Array(3);
  const B = new Float64Array(27);
  for (let t = 0; t < region.length; t++) {
    triangleCorners(mesh, t, x, y);
    const { bending: D, shear } = rigidities[region[t]];
    const k0 = freeCurvature === undefined ? 0 : freeCurvature[region[t]];
    for (let c = 0; c < 3; c++) {
      plateCurvature(x, y, D, theory === 'thin' ? null : shear, c === 0 ? 1 : 0, c === 1 ? 1 : 0, c === 2 ? 1 : 0, B);
      let kxx = -k0;
      let kyy = -k0;
      let twist = 0;
      for (let p = 0; p < 9; p++) {
        const dof = u[3 * triangles[3 * t + Math.floor(p / 3)] + (p % 3)];
        kxx += B[p] * dof;
        kyy += B[9 + p] * dof;
        twist += B[18 + p] * dof;
      }
      const at = 9 * t + 3 * c;
      own[at] = D[0] * kxx + D[1] * kyy + D[2] * twist;
      own[at + 1] = D[1] * kxx + D[3] * kyy + D[4] * twist;
      own[at + 2] = D[2] * kxx + D[4] * kyy + D[5] * twist;
    }
  }
  return own;
}

/** Means at each node over the corners there of triangles with the same region, weighted by the triangles' area. */
export function smoothedMoments(
  { x, y, triangles, region }: Pick<Mesh, 'x' | 'y' | 'triangles' | 'region'>,
  own: Float64Array,
): Float64Array {
  const area = Float64Array.from(region, (_, t) => {
    const [a, b, c] = [triangles[3 * t], triangles[3 * t + 1], triangles[3 * t + 2]];
    return ((x[b] - x[a]) * (y[c] - y[a]) - (x[c] - x[a]) * (y[b] - y[a])) / 2;
  });
  const { start, corner } = cornersByNode(triangles, x.length);
  const smooth = new Float64Array(own.length);
  for (let node = 0; node < x.length; node++)
    for (let p = start[node]; p < start[node + 1]; p++) {
      const at = 3 * corner[p];
      const section = region[Math.floor(corner[p] / 3)];
      let weight = 0;
      for (let q = start[node]; q < start[node + 1]; q++) {
        const t = Math.floor(corner[q] / 3);
        if (region[t] !== section) continue;
        weight += area[t];
        for (let m = 0; m < 3; m++) smooth[at + m] += area[t] * own[3 * corner[q] + m];
      }
      for (let m = 0; m < 3; m++) smooth[at + m] /= weight;
    }
  return smooth;
}

/** Corners `3 * t + c` around each node, `corner[start[node]]` to `corner[start[node + 1] - 1]`. */
function cornersByNode(triangles: Uint32Array, n: number): { start: Uint32Array; corner: Uint32Array } {
  const start = new Uint32Array(n + 1);
  for (const node of triangles) start[node + 1]++;
  for (let i = 0; i < n; i++) start[i + 1] += start[i];
  const next = start.slice();
  const corner = new Uint32Array(triangles.length);
  triangles.forEach((node, c) => {
    corner[next[node]++] = c;
  });
  return { start, corner };
}

/**
 * Moments at a point, linear between the smoothed moments at the corners of its triangle.
 *
 * @param moments from {@link nodalMoments}
 * @throws Fault OUTSIDE when the point is off the plate
 */
export function momentsAt(mesh: Mesh, locator: Locator, moments: Float64Array, at: Point, path: string): Moments {
  const t = locate(locator, at[0], at[1]);
  if (t < 0)
    throw new Fault(
      'OUTSIDE',
      `The point at (${at[0]}, ${at[1]}) mm given at ${path} lies off the plate. Move it onto the plate, clear of openings.`,
      path,
      { at },
    );
  const [l0, l1, l2] = barycentric(mesh, t, at[0], at[1]);
  const value = (m: number): number =>
    l0 * moments[9 * t + m] + l1 * moments[9 * t + 3 + m] + l2 * moments[9 * t + 6 + m];
  return { mxx: value(0), myy: value(1), mxy: value(2) };
}
