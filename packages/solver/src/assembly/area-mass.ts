import { addFoundationStiffness } from '../element/foundation.ts';
import type { Ring } from '../geometry/point.ts';
import type { Locator } from '../mesh/locate.ts';
import type { Mesh } from '../mesh/mesh.ts';
import { foundationOver } from './foundation.ts';
import { areaRow, everywhereRow, spanOf } from './rows.ts';
import { triangleCorners } from './triangle-corners.ts';

/** Integrals over an area of the plate, as they act on fields `[3 * nNodes]` in global axes. */
export interface AreaMass {
  /** mm2 */
  readonly area: number;
  /** Integral of w. */
  mean(u: Float64Array): number;
  /** `M u` with `v M u` the integral of the product of the deflections of v and u. */
  times(u: Float64Array): Float64Array;
}

/**
 * Exact integrals of the deflection and of products of two deflections over the plate inside a ring: a foundation of
 * unit modulus stores half of `u M u`.
 *
 * @throws Fault OUTSIDE when the ring misses the plate
 */
export function areaMass(mesh: Mesh, locator: Locator, over: Ring | 'all', path: string): AreaMass {
  const { triangle, start, corner } = foundationOver(mesh, locator, over, 1, path);
  const row = over === 'all' ? everywhereRow(mesh) : areaRow(mesh, locator, over, path);
  const x = new Float64Array(3);
  const y = new Float64Array(3);
  const parts = Array.from(triangle, (t, part) => {
    triangleCorners(mesh, t, x, y);
    const Me = new Float64Array(81);
    const polygon = corner.subarray(2 * start[part], 2 * start[part + 1]);
    addFoundationStiffness(x, y, 1, polygon, polygon.length / 2, Me);
    return Me;
  });
  const dof = new Uint32Array(9);
  return {
    area: spanOf(row),
    mean: (u) => row.dof.reduce((sum, d, k) => sum + row.value[k] * u[d], 0),
    times(u) {
      const f = new Float64Array(u.length);
      triangle.forEach((t, part) => {
        for (let a = 0; a < 9; a++) dof[a] = 3 * mesh.triangles[3 * t + Math.floor(a / 3)] + (a % 3);
        const Me = parts[part];
        for (let a = 0; a < 9; a++) {
          let sum = 0;
          for (let b = 0; b < 9; b++) sum += Me[9 * a + b] * u[dof[b]];
          f[dof[a]] += sum;
        }
      });
      return f;
    },
  };
}
