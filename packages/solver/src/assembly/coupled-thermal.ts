import { COUPLED_DOFS, neutralStrain } from '../element/coupled-triangle.ts';
import { twiceArea } from '../element/plate-kinematics.ts';
import type { Mesh } from '../mesh/mesh.ts';
import type { FreeStrain } from '../section/free-strain.ts';
import type { Membrane } from '../section/membrane.ts';
import type { Rigidity } from '../section/rigidity.ts';
import { COUPLED_ROWS, type InPlane } from './in-plane.ts';
import { thermalLoad } from './thermal.ts';
import { triangleCorners } from './triangle-corners.ts';

/**
 * Consistent load of a temperature field on a plate that stretches where it bends: that of the free curvatures, as
 * `thermalLoad`, and `sum integral of E' A {e0, e0, 0} dA` of the free strains of the neutral surfaces.
 *
 * @param mesh its `region` indexes `rigidities`, `membranes` and `freeStrains`
 * @returns `[3 * nRows]` global axes, N and N mm; in balance with itself
 */
export function coupledThermalLoad(
  mesh: Pick<Mesh, 'x' | 'y' | 'triangles' | 'region'>,
  { rows, pattern }: InPlane,
  rigidities: readonly Rigidity[],
  membranes: readonly Membrane[],
  theory: 'thin' | 'shear',
  freeStrains: readonly FreeStrain[],
): Float64Array {
  const f = new Float64Array(3 * pattern.n);
  f.set(thermalLoad(mesh, rigidities, theory, freeStrains));
  const x = new Float64Array(3);
  const y = new Float64Array(3);
  const E = new Float64Array(3 * COUPLED_DOFS);
  for (let t = 0; t < mesh.region.length; t++) {
    triangleCorners(mesh, t, x, y);
    const section = mesh.region[t];
    const { bending, shear } = rigidities[section];
    const { stretching: A, offset } = membranes[section];
    // The strain is linear over the triangle: its integral is its value at the centroid times the area.
    neutralStrain(x, y, bending, theory === 'thin' ? null : shear, offset, 1 / 3, 1 / 3, 1 / 3, E);
    const load = ((freeStrains[section].strain ?? 0) * twiceArea(x, y)) / 2;
    const nxx = load * (A[0] + A[1]);
    const nyy = load * (A[1] + A[3]);
    const nxy = load * (A[2] + A[4]);
    for (let p = 0; p < COUPLED_DOFS; p++)
      f[3 * rows[COUPLED_ROWS * t + Math.floor(p / 3)] + (p % 3)] +=
        nxx * E[p] + nyy * E[COUPLED_DOFS + p] + nxy * E[2 * COUPLED_DOFS + p];
  }
  return f;
}
