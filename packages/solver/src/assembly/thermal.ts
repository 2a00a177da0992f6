import { plateCurvature } from '../element/plate-triangle.ts';
import type { Mesh } from '../mesh/mesh.ts';
import type { FreeStrain } from '../section/free-strain.ts';
import type { Rigidity } from '../section/rigidity.ts';
import { triangleCorners } from './triangle-corners.ts';

/**
 * Consistent load of a temperature gradient through the thickness, `f = sum integral of B' D {k0, k0, 0} dA`: the
 * moments that would hold the plate flat, let go. Moments in the plate are then `D (k - {k0, k0, 0})`.
 *
 * @param mesh its `region` indexes `rigidities` and `freeStrains`
 * @param freeStrains what each section would do if free, with its curvature k0
 * @returns `[3 * nNodes]` global axes, N and N mm; in balance with itself
 */
export function thermalLoad(
  mesh: Pick<Mesh, 'x' | 'y' | 'triangles' | 'region'>,
  rigidities: readonly Rigidity[],
  theory: 'thin' | 'shear',
  freeStrains: readonly Pick<FreeStrain, 'curvature'>[],
): Float64Array {
  const f = new Float64Array(3 * mesh.x.length);
  const x = new Float64Array(3);
  const y = new Float64Array(3);
  const B = new Float64Array(27);
  for (let t = 0; t < mesh.region.length; t++) {
    triangleCorners(mesh, t, x, y);
    const { bending, shear } = rigidities[mesh.region[t]];
    // Curvature is linear over the triangle: its integral is its value at the centroid times the area.
    plateCurvature(x, y, bending, theory === 'thin' ? null : shear, 1 / 3, 1 / 3, 1 / 3, B);
    const load =
      (freeStrains[mesh.region[t]].curvature * ((x[1] - x[0]) * (y[2] - y[0]) - (x[2] - x[0]) * (y[1] - y[0]))) / 2;
    const mxx = load * (bending[0] + bending[1]);
    const myy = load * (bending[1] + bending[3]);
    const mxy = load * (bending[2] + bending[4]);
    for (let p = 0; p < 9; p++)
      f[3 * mesh.triangles[3 * t + Math.floor(p / 3)] + (p % 3)] += mxx * B[p] + myy * B[9 + p] + mxy * B[18 + p];
  }
  return f;
}
