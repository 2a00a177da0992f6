import { COUPLED_DOFS, coupledStiffness } from '../element/coupled-triangle.ts';
import { addFoundationStiffness } from '../element/foundation.ts';
import type { BlockMatrix } from '../linear-algebra/block-matrix.ts';
import type { Mesh } from '../mesh/mesh.ts';
import type { Membrane } from '../section/membrane.ts';
import type { Rigidity } from '../section/rigidity.ts';
import type { Foundation } from './foundation.ts';
import type { Holds } from './holds.ts';
import { COUPLED_ROWS, type InPlane } from './in-plane.ts';
import { toLocalAxes } from './local-axes.ts';
import { triangleCorners } from './triangle-corners.ts';

/**
 * Stiffness of a plate that stretches where it bends, as `assembleStiffness` makes it of one that does not: over the
 * plate's rows and then the in-plane ones, in the local axes of the holds.
 *
 * @param mesh its `region` indexes `rigidities` and `membranes`
 * @param holds of all rows, as from `coupledHolds`
 */
export function assembleCoupled(
  mesh: Pick<Mesh, 'x' | 'y' | 'triangles' | 'region'>,
  { rows, pattern }: InPlane,
  rigidities: readonly Rigidity[],
  membranes: readonly Membrane[],
  theory: 'thin' | 'shear',
  foundations: readonly Foundation[],
  holds: Holds,
): BlockMatrix {
  const { region } = mesh;
  const value = new Float64Array(9 * pattern.column.length);
  const x = new Float64Array(3);
  const y = new Float64Array(3);
  const Ke = new Float64Array(COUPLED_DOFS ** 2);
  const add = (t: number) => {
    toLocalAxes(holds, rows, COUPLED_ROWS * t, COUPLED_ROWS, Ke);
    scatter(pattern.block, rows, t, Ke, value);
  };
  for (let t = 0; t < region.length; t++) {
    triangleCorners(mesh, t, x, y);
    const { bending, shear } = rigidities[region[t]];
    const { stretching, offset } = membranes[region[t]];
    coupledStiffness(x, y, bending, theory === 'thin' ? null : shear, stretching, offset, Ke);
    add(t);
  }
  const own = new Float64Array(81);
  for (const { modulus, triangle, start, corner } of foundations)
    for (let part = 0; part < triangle.length; part++) {
      triangleCorners(mesh, triangle[part], x, y);
      const polygon = corner.subarray(2 * start[part], 2 * start[part + 1]);
      own.fill(0);
      addFoundationStiffness(x, y, modulus, polygon, polygon.length / 2, own);
      Ke.fill(0);
      for (let p = 0; p < 9; p++) Ke.set(own.subarray(9 * p, 9 * p + 9), COUPLED_DOFS * p);
      add(triangle[part]);
    }
  const { n, start, column } = pattern;
  // The dof that in-plane rows lack: scaled like its neighbours.
  for (let row = mesh.x.length; row < n; row++) {
    const diagonal = 9 * (start[row + 1] - 1);
    value[diagonal] = value[diagonal + 4];
  }
  return { n, start, column, value };
}

/** Adds the blocks of Ke on and below the diagonal to their places. */
function scatter(block: Uint32Array, rows: Uint32Array, t: number, Ke: Float64Array, value: Float64Array): void {
  let k = (t * COUPLED_ROWS * (COUPLED_ROWS + 1)) / 2;
  for (let p = 0; p < COUPLED_ROWS; p++)
    for (let q = 0; q <= p; q++, k++) {
      // A block stands in the row of the larger node.
      const [i, j] = rows[COUPLED_ROWS * t + p] >= rows[COUPLED_ROWS * t + q] ? [p, q] : [q, p];
      for (let a = 0; a < 3; a++)
        for (let b = 0; b < 3; b++) value[9 * block[k] + 3 * a + b] += Ke[COUPLED_DOFS * (3 * i + a) + 3 * j + b];
    }
}
