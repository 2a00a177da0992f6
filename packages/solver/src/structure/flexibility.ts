import { type AreaMass, areaMass } from '../assembly/area-mass.ts';
import { toGlobal } from '../assembly/holds.ts';
import type { Ring } from '../geometry/point.ts';
import { addScaled, dot } from '../linear-algebra/half-solve.ts';
import { backward } from '../linear-algebra/solve.ts';
import { dotRow } from '../linear-algebra/sparse-row.ts';
import type { PlateSupport } from '../plate/plate-problem.ts';
import { type SupportSolve, solveSupport } from '../supports/compliance.ts';
import type { Loading } from './loading.ts';
import type { Structure } from './structure.ts';
import { supportOf } from './support.ts';

/*
 * Parts that answers for many placements of the supports are put together from, all by one factor of the grounded
 * plate. Fields are `[3 * nRows]`: w, thetaX, thetaY of each node.
 */

/** Forward half of a support at a place; see {@link solveSupport}. @throws Fault OUTSIDE */
export function supportAt(structure: Structure, support: PlateSupport, index: number): SupportSolve {
  return solveSupport(structure.factor, structure.motion, supportOf(structure, support, index));
}

/** Deflection of the grounded plate under a unit force of a support, `K^-1 c^T`, mm/N, local axes of the holds. */
export function unitField({ factor, stiffness }: Structure, { half }: SupportSolve): Float64Array {
  const y = new Float64Array(3 * stiffness.n);
  addScaled(y, 1, half);
  return backward(factor, y);
}

/** Deflection of the grounded plate under the loads of a case, local axes of the holds. */
export function loadField({ factor }: Structure, { half }: Loading): Float64Array {
  return backward(factor, half);
}

/** Deflection that a support sees of a field in local axes, `c u`. */
export function seen({ support }: SupportSolve, field: Float64Array): number {
  return dotRow(support.row, field);
}

/** Compliance between two supports, `c_i K^-1 c_j^T`, mm/N, from their half-solves. */
export function complianceOf(a: SupportSolve, b: SupportSolve): number {
  return dot(a.half, b.half);
}

/** `[3 * nodes.length]` values of a field at some nodes, from local to global axes. */
export function atNodes({ holds }: Structure, field: Float64Array, nodes: Uint32Array): Float64Array {
  let from = field;
  if (holds.turned.length > 0) {
    from = field.slice();
    toGlobal(holds, from);
  }
  const values = new Float64Array(3 * nodes.length);
  nodes.forEach((node, k) => {
    for (let a = 0; a < 3; a++) values[3 * k + a] = from[3 * node + a];
  });
  return values;
}

/** Integrals of w and of products of w over a ring, or over the whole plate. @throws Fault OUTSIDE */
export function massOver({ mesh, locator }: Structure, over: Ring | 'all', path: string): AreaMass {
  return areaMass(mesh, locator, over, path);
}
