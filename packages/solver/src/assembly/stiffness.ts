import { addFoundationStiffness } from '../element/foundation.ts';
import { plateStiffness } from '../element/plate-triangle.ts';
import type { BlockMatrix } from '../linear-algebra/block-matrix.ts';
import type { Mesh } from '../mesh/mesh.ts';
import type { Rigidity } from '../section/rigidity.ts';
import type { Foundation } from './foundation.ts';
import type { Holds } from './holds.ts';
import { toLocalAxes } from './local-axes.ts';
import type { MeshPattern } from './pattern.ts';
import { triangleCorners } from './triangle-corners.ts';

/**
 * Stiffness of the plate: `K[dofs, dofs] += Ke` over its triangles and foundations, in the local axes of the holds.
 *
 * Held dofs stay in the system as rows of their own: off-diagonals zero, the diagonal what the elements gave it, so
 * that it is scaled like its neighbours.
 *
 * @param mesh its `region` indexes `rigidities`
 * @param theory `shear` uses the shear stiffness of each section; one that gives none is rigid in shear
 */
export function assembleStiffness(
  mesh: Pick<Mesh, 'x' | 'y' | 'triangles' | 'region'>,
  pattern: MeshPattern,
  rigidities: readonly Rigidity[],
  theory: 'thin' | 'shear',
  foundations: readonly Foundation[],
  holds: Holds,
): BlockMatrix {
  const { triangles, region } = mesh;
  const value = new Float64Array(9 * pattern.column.length);
  const x = new Float64Array(3);
  const y = new Float64Array(3);
  const Ke = new Float64Array(81);
  for (let t = 0; t < region.length; t++) {
    triangleCorners(mesh, t, x, y);
    const { bending, shear } = rigidities[region[t]];
    plateStiffness(x, y, bending, theory === 'thin' ? null : shear, Ke);
    toLocalAxes(holds, triangles, 3 * t, 3, Ke);
    scatter(pattern.block, triangles, t, Ke, value);
  }
  for (const { modulus, triangle, start, corner } of foundations)
    for (let part = 0; part < triangle.length; part++) {
      const t = triangle[part];
      triangleCorners(mesh, t, x, y);
      Ke.fill(0);
      const polygon = corner.subarray(2 * start[part], 2 * start[part + 1]);
      addFoundationStiffness(x, y, modulus, polygon, polygon.length / 2, Ke);
      toLocalAxes(holds, triangles, 3 * t, 3, Ke);
      scatter(pattern.block, triangles, t, Ke, value);
    }
  const { n, start, column } = pattern;
  return { n, start, column, value };
}

/** Adds the six blocks of Ke on and below the diagonal to their places. */
function scatter(block: Uint32Array, triangles: Uint32Array, t: number, Ke: Float64Array, value: Float64Array): void {
  for (let k = 0; k < 3; k++) {
    addBlock(Ke, 30 * k, value, 9 * block[6 * t + k]);
    const i = k === 2 ? 0 : k + 1;
    const j = k === 0 ? 2 : k - 1;
    // The row belongs to the larger node.
    const isLarger = triangles[3 * t + i] > triangles[3 * t + j];
    addBlock(Ke, isLarger ? 27 * i + 3 * j : 27 * j + 3 * i, value, 9 * block[6 * t + 3 + k]);
  }
}

/** Adds the 3x3 block of Ke that begins at `from` to the one of `value` that begins at `to`. */
function addBlock(Ke: Float64Array, from: number, value: Float64Array, to: number): void {
  value[to] += Ke[from];
  value[to + 1] += Ke[from + 1];
  value[to + 2] += Ke[from + 2];
  value[to + 3] += Ke[from + 9];
  value[to + 4] += Ke[from + 10];
  value[to + 5] += Ke[from + 11];
  value[to + 6] += Ke[from + 18];
  value[to + 7] += Ke[from + 19];
  value[to + 8] += Ke[from + 20];
}
