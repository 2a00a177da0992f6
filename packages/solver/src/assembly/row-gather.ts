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
  const byNode = new Map<number, Float64Array>();
  const xe = new Float64Array(3);
  const ye = new Float64Array(3);
  const weights = new Float64Array(6);
  const N = new Float64Array(9);
  return {
    add(triangle, weigh) {
      triangleCorners(mesh, triangle, xe, ye);
      weights.fill(0);
      weigh(xe, ye, weights);
      deflectionRow(xe, ye, weights, N);
      for (let c = 0; c < 3; c++) {
        const node = mesh.triangles[3 * triangle + c];
        let own = byNode.get(node);
        if (own === undefined) {
          own = new Float64Array(3);
          byNode.set(node, own);
        }
        for (let a = 0; a < 3; a++) own[a] += N[3 * c + a];
      }
    },
    row() {
      const nodes = Uint32Array.from(byNode.keys()).sort();
      const dof = new Uint32Array(3 * nodes.length);
      const value = new Float64Array(3 * nodes.length);
      nodes.forEach((node, k) => {
        for (let a = 0; a < 3; a++) dof[3 * k + a] = 3 * node + a;
        value.set(byNode.get(node)!, 3 * k);
      });
      return { dof, value };
    },
  };
}
