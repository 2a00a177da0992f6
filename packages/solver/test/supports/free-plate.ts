import { blockPattern } from '../../src/assembly/pattern.ts';
import { assembleStiffness } from '../../src/assembly/stiffness.ts';
import type { BlockMatrix, SparseRow } from '../../src/linear-algebra/block-matrix.ts';
import { factorise } from '../../src/linear-algebra/factor.ts';
import { graphOf } from '../../src/linear-algebra/graph.ts';
import { order } from '../../src/linear-algebra/order.ts';
import { analyse } from '../../src/linear-algebra/symbolic.ts';
import { locator } from '../../src/mesh/locate.ts';
import { rigidityOf } from '../../src/section/rigidity-of.ts';
import { grounded, grounding } from '../../src/supports/grounding.ts';
import { rigidMotion } from '../../src/supports/rigid-motion.ts';

/** A free rectangular steel plate on a structured mesh, 12 mm by 8 mm. */
export function freePlate(columns: number, rows: number) {
  const n = (columns + 1) * (rows + 1);
  const x = Float64Array.from({ length: n }, (_, i) => (12 * (i % (columns + 1))) / columns);
  const y = Float64Array.from({ length: n }, (_, i) => (8 * Math.floor(i / (columns + 1))) / rows);
  const corners: number[] = [];
  for (let r = 0; r < rows; r++)
    for (let c = 0; c < columns; c++) {
      const i = r * (columns + 1) + c;
      corners.push(i, i + 1, i + columns + 2, i, i + columns + 2, i + columns + 1);
    }
  const triangles = Uint32Array.from(corners);
  const region = new Uint32Array(triangles.length / 3);
  const pattern = blockPattern({ x, triangles });
  const holds = {
    cos: new Float64Array(n).fill(1),
    sin: new Float64Array(n),
    mask: new Uint8Array(n),
    turned: new Uint32Array(0),
  };
  const steel = rigidityOf({ E: 2e5, nu: 0.3, thickness: 0.6 }, 'section');
  const K = assembleStiffness({ x, y, triangles, region }, pattern, [steel], 'shear', [], holds);
  const motion = rigidMotion(K, x, y, () => {});
  const ground = grounding(K, motion);
  const factor = factorise(analyse(pattern, order(graphOf(pattern), x, y)), grounded(K, ground));
  const mesh = { x, y, triangles, region, boundary: new Uint32Array(0), minAngle: 0 };
  return { x, y, n, K, motion, ground, factor, mesh, locator: locator(mesh) };
}

/** Row of w at a node. */
export function atNode(node: number): SparseRow {
  return { dof: Uint32Array.of(3 * node), value: Float64Array.of(1) };
}

/** Entry of a stored block matrix as a dense array, `[3n * 3n]` row-major. */
export function denseOf(K: BlockMatrix): number[][] {
  const dense = Array.from({ length: 3 * K.n }, () => new Array<number>(3 * K.n).fill(0));
  for (let i = 0; i < K.n; i++)
    for (let k = K.start[i]; k < K.start[i + 1]; k++)
      for (let a = 0; a < 3; a++)
        for (let b = 0; b < 3; b++) {
          const value = K.value[9 * k + 3 * a + b];
          dense[3 * i + a][3 * K.column[k] + b] = value;
          dense[3 * K.column[k] + b][3 * i + a] = value;
        }
  return dense;
}
