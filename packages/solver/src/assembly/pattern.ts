import type { BlockPattern } from '../linear-algebra/block-matrix.ts';
import type { Mesh } from '../mesh/mesh.ts';
import { sortedBy } from './counting-sort.ts';

/** Block pattern of a mesh with the place of every element's blocks in it. */
export interface MeshPattern extends BlockPattern {
  /**
   * `[6 * nTriangles]` block of each node pair of the triangle: (0,0), (1,1), (2,2), (1,2), (2,0), (0,1).
   * A pair (i, j) is stored in the row of its larger node.
   */
  readonly block: Uint32Array;
}

/**
 * Pattern of the stiffness of a mesh: two nodes are coupled when they share a triangle.
 *
 * Two counting sorts of the element edges, by smaller and then by larger node, bring the columns of every row in
 * ascending order in linear time.
 */
export function blockPattern({ x, triangles }: Pick<Mesh, 'x' | 'triangles'>): MeshPattern {
  const n = x.length;
  const nTriangles = triangles.length / 3;
  const nEdges = 3 * nTriangles;
  // Edge 3 t + k lies opposite corner k of triangle t.
  const larger = new Uint32Array(nEdges);
  const smaller = new Uint32Array(nEdges);
  for (let t = 0; t < nTriangles; t++)
    for (let k = 0; k < 3; k++) {
      const i = triangles[3 * t + ((k + 1) % 3)];
      const j = triangles[3 * t + ((k + 2) % 3)];
      larger[3 * t + k] = Math.max(i, j);
      smaller[3 * t + k] = Math.min(i, j);
    }
  const inOrder = new Uint32Array(nEdges);
  for (let e = 0; e < nEdges; e++) inOrder[e] = e;
  const sorted = sortedBy(larger, sortedBy(smaller, inOrder, n), n);

  const start = new Uint32Array(n + 1);
  const column = new Uint32Array(n + nEdges);
  const block = new Uint32Array(6 * nTriangles);
  let blocks = 0;
  let e = 0;
  for (let row = 0; row < n; row++) {
    start[row] = blocks;
    for (; e < nEdges && larger[sorted[e]] === row; e++) {
      const edge = sorted[e];
      if (blocks === start[row] || column[blocks - 1] !== smaller[edge]) column[blocks++] = smaller[edge];
      block[6 * Math.floor(edge / 3) + 3 + (edge % 3)] = blocks - 1;
    }
    column[blocks++] = row;
  }
  start[n] = blocks;
  for (let t = 0; t < nTriangles; t++)
    for (let k = 0; k < 3; k++) block[6 * t + k] = start[triangles[3 * t + k] + 1] - 1;
  return { n, start, column: column.slice(0, blocks), block };
}
