import type { BlockMatrix } from '../linear-algebra/block-matrix.ts';
import type { RigidMotion } from './rigid-motion.ts';

/** Springs on w that make a free plate definite. They carry no force once loads and reactions balance. */
export interface Grounding {
  /** One node for each free rigid motion. */
  readonly nodes: Uint32Array;
  /** N/mm, one for each node. */
  readonly stiffness: Float64Array;
}

/**
 * Chooses as many springs on w as there are free rigid motions, as far apart as the plate allows.
 *
 * With exactly r springs the r conditions `N^T s = 0` of a balanced load force every spring force s to zero, so the
 * grounded plate gives the free plate's answer up to a rigid motion, exactly. The nodes come from a QR elimination
 * with pivoting on the rows of N (Businger and Golub 1965): the widest base, hence the smallest rounding.
 * Each spring is as stiff as its node.
 */
export function grounding(K: BlockMatrix, motion: RigidMotion): Grounding {
  const r = motion.count;
  const rows = motion.fields.map((field) => Float64Array.from({ length: K.n }, (_, i) => field[3 * i]));
  const nodes = new Uint32Array(r);
  for (let k = 0; k < r; k++) {
    let widest = 0;
    let most = -1;
    for (let i = 0; i < K.n; i++) {
      const width = squared(rows, i);
      if (width <= most) continue;
      most = width;
      widest = i;
    }
    nodes[k] = widest;
    // Remove the chosen row's direction from every row, so that the next choice is the farthest from those before.
    const direction = rows.map((row) => row[widest]);
    const norm2 = squared(rows, widest);
    for (let i = 0; i < K.n; i++) {
      let along = 0;
      for (let m = 0; m < r; m++) along += rows[m][i] * direction[m];
      for (let m = 0; m < r; m++) rows[m][i] -= (along / norm2) * direction[m];
    }
  }
  const stiffness = Float64Array.from(nodes, (node) => K.value[diagonalOf(K, node)]);
  return { nodes, stiffness };
}

/** `K + sum s e e^T`: the same pattern, new values. */
export function grounded(K: BlockMatrix, { nodes, stiffness }: Grounding): BlockMatrix {
  const value = K.value.slice();
  nodes.forEach((node, k) => {
    value[diagonalOf(K, node)] += stiffness[k];
  });
  return { ...K, value };
}

/** Index in `K.value` of the w-w entry of the node's diagonal block. */
function diagonalOf(K: BlockMatrix, node: number): number {
  return 9 * (K.start[node + 1] - 1);
}

function squared(rows: readonly Float64Array[], i: number): number {
  let sum = 0;
  for (let m = 0; m < rows.length; m++) sum += rows[m][i] * rows[m][i];
  return sum;
}
