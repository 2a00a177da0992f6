import { type DeflectionWeights, deflectionRow } from '../element/deflection.ts';
import type { SparseRow } from '../linear-algebra/block-matrix.ts';
import type { Mesh } from '../mesh/mesh.ts';
import { triangleCorners } from './triangle-corners.ts';

/** Sums up what single triangles give to a row. */
export interface RowGather {
  /**
   * Adds what one triangle gives.
   *
   * @param weigh adds the weights of a point, line or area to the six it gets, for the triangle's corners x, y
   */
  add(triangle: number, weigh: (x: Float64Array, y: Float64Array, weights: DeflectionWeights) => void): void;
  /** The sum so far; without entries when nothing was added. */
  row(): SparseRow;
}

export function rowGather(mesh: Pick<Mesh, 'x' | 'y' | 'triangles'>): RowGather {
  const slot = new Map<number, number>();
  const sum: number[] = [];
  const x = new Float64Array(3);
  const y = new Float64Array(3);
  const weights = new Float64Array(6);
  const N = new Float64Array(9);
  return {
    add(triangle, weigh) {
      triangleCorners(mesh, triangle, x, y);
      weights.fill(0);
      weigh(x, y, weights);
      deflectionRow(x, y, weights, N);
      for (let c = 0; c < 3; c++) {
        const node = mesh.triangles[3 * triangle + c];
        let at = slot.get(node);
        if (at === undefined) {
          at = sum.length;
          slot.set(node, at);
          sum.push(0, 0, 0);
        }
        sum[at] += N[3 * c];
        sum[at + 1] += N[3 * c + 1];
        sum[at + 2] += N[3 * c + 2];
      }
    },
    row() {
      const nodes = Uint32Array.from(slot.keys()).sort();
      const dof = new Uint32Array(3 * nodes.length);
      const value = new Float64Array(3 * nodes.length);
      for (let k = 0; k < nodes.length; k++) {
        const at = slot.get(nodes[k])!;
        for (let a = 0; a < 3; a++) {
          dof[3 * k + a] = 3 * nodes[k] + a;
          value[3 * k + a] = sum[at + a];
        }
      }
      return { dof, value };
    },
  };
}
