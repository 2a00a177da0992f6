import { Fault } from '../fault/fault.ts';
import type { Point } from '../geometry/point.ts';
import { barycentric, type Locator, locate } from '../mesh/locate.ts';
import type { Mesh } from '../mesh/mesh.ts';
import type { FreeStrain } from '../section/free-strain.ts';
import type { Rigidity } from '../section/rigidity.ts';
import { nodalCurvatures } from './nodal-strain.ts';

/** Moments per unit length, N. */
export interface Moments {
  readonly mxx: number;
  readonly myy: number;
  readonly mxy: number;
}

/**
 * Smoothed moments at the corners of every triangle, `D (kappa - k0)` of the smoothed curvatures.
 *
 * @param mesh its `region` indexes `rigidities` and `freeStrains`
 * @param u `[3 * nNodes]` global dofs
 * @param freeStrains of each section: its curvature costs no moment
 * @returns `[9 * nTriangles]`: mxx, myy, mxy at each corner of each triangle
 */
export function nodalMoments(
  mesh: Pick<Mesh, 'x' | 'y' | 'triangles' | 'region'>,
  rigidities: readonly Rigidity[],
  theory: 'thin' | 'shear',
  u: Float64Array,
  freeStrains: readonly Pick<FreeStrain, 'curvature'>[] | null = null,
): Float64Array {
  const { region } = mesh;
  const [moments] = nodalCurvatures(mesh, rigidities, theory, [u]);
  for (let at = 0; at < moments.length; at += 3) {
    const section = region[Math.floor(at / 9)];
    const D = rigidities[section].bending;
    const k0 = freeStrains === null ? 0 : freeStrains[section].curvature;
    const kxx = moments[at] - k0;
    const kyy = moments[at + 1] - k0;
    const twist = moments[at + 2];
    moments[at] = D[0] * kxx + D[1] * kyy + D[2] * twist;
    moments[at + 1] = D[1] * kxx + D[3] * kyy + D[4] * twist;
    moments[at + 2] = D[2] * kxx + D[4] * kyy + D[5] * twist;
  }
  return moments;
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
