import type { Mesh } from '../mesh/mesh.ts';
import { type CliquePattern, cliquePattern } from './clique-pattern.ts';
import type { MeshPattern } from './pattern.ts';

/** Block rows of one triangle: its corners' plate dofs, their in-plane dofs, and those of its sides. */
export const COUPLED_ROWS = 9;

/**
 * In-plane unknowns of a mesh, for sections that stretch where they bend: u and v of every node and of the middle of every
 * side, quadratic over a triangle. They follow the plate's block rows, n nodes first: row n + i is node i in the plane,
 * row 2 n + e side e. Such a row has three dofs as well, (none, u, v); the first is held.
 */
export interface InPlane {
  /** `[9 * nTriangles]` rows of each triangle: {@link COUPLED_ROWS}; a side is listed with the corner opposite to it. */
  readonly rows: Uint32Array;
  /** `[2 * nSides]` nodes at the ends of each side. */
  readonly ends: Uint32Array;
  /** `[nRows]` places of all rows, plate's and in-plane, mm. */
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly pattern: CliquePattern;
}

/** @param plate pattern of the plate's own rows: each of its off-diagonal blocks is a side of the mesh */
export function inPlaneOf({ x, y, triangles }: Pick<Mesh, 'x' | 'y' | 'triangles'>, plate: MeshPattern): InPlane {
  const n = x.length;
  const nSides = plate.column.length - n;
  const ends = new Uint32Array(2 * nSides);
  for (let row = 0; row < n; row++)
    for (let k = plate.start[row]; k < plate.start[row + 1] - 1; k++) ends.set([row, plate.column[k]], 2 * (k - row));

  const nRows = 2 * n + nSides;
  const rowX = new Float64Array(nRows);
  const rowY = new Float64Array(nRows);
  for (const offset of [0, n]) {
    rowX.set(x, offset);
    rowY.set(y, offset);
  }
  for (let e = 0; e < nSides; e++) {
    const [i, j] = [ends[2 * e], ends[2 * e + 1]];
    rowX[2 * n + e] = (x[i] + x[j]) / 2;
    rowY[2 * n + e] = (y[i] + y[j]) / 2;
  }

  const rows = new Uint32Array(3 * triangles.length);
  for (let t = 0; t < triangles.length / 3; t++)
    for (let k = 0; k < 3; k++) {
      const node = triangles[3 * t + k];
      const [i, j] = [triangles[3 * t + ((k + 1) % 3)], triangles[3 * t + ((k + 2) % 3)]];
      // Diagonal blocks come last in their rows: there are as many before a side's block as rows before its own.
      const side = plate.block[6 * t + 3 + k] - Math.max(i, j);
      rows[9 * t + k] = node;
      rows[9 * t + 3 + k] = n + node;
      rows[9 * t + 6 + k] = 2 * n + side;
    }
  return { rows, ends, x: rowX, y: rowY, pattern: cliquePattern(nRows, rows, COUPLED_ROWS) };
}
