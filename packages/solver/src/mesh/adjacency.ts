import type { Mesh } from './mesh.ts';
import { nextEdge } from './triangulation.ts';

/** Compressed rows: the entries of row i are `neighbour[start[i]] .. neighbour[start[i + 1] - 1]`. */
export interface Graph {
  /** `[n + 1]` */
  readonly start: Uint32Array;
  /** `[start[n]]` */
  readonly neighbour: Uint32Array;
}

/** Nodes joined to each node by an edge, ascending, without the node itself. */
export function vertexGraph(mesh: Mesh): Graph {
  const { triangles } = mesh;
  const n = mesh.x.length;
  const room = new Uint32Array(n + 1);
  for (let e = 0; e < triangles.length; e++) room[triangles[e] + 1] += 2;
  for (let v = 0; v < n; v++) room[v + 1] += room[v];
  const filled = room.slice(0, n);
  const both = new Uint32Array(room[n]);
  for (let t = 0; t < triangles.length; t += 3)
    for (let k = 0; k < 3; k++) {
      const v = triangles[t + k];
      both[filled[v]++] = triangles[t + ((k + 1) % 3)];
      both[filled[v]++] = triangles[t + ((k + 2) % 3)];
    }

  // An inner edge was entered from both its triangles. Rows are short: insertion sort.
  const start = new Uint32Array(n + 1);
  const neighbour = new Uint32Array(both.length);
  let count = 0;
  for (let v = 0; v < n; v++) {
    start[v] = count;
    for (let i = room[v]; i < room[v + 1]; i++) {
      const w = both[i];
      let k = count;
      while (k > start[v] && neighbour[k - 1] > w) k--;
      if (k > start[v] && neighbour[k - 1] === w) continue;
      neighbour.copyWithin(k + 1, k, count);
      neighbour[k] = w;
      count++;
    }
  }
  start[n] = count;
  return { start, neighbour: neighbour.slice(0, count) };
}

/** Half-edges that leave each node, 3 t + k from corner k of triangle t, ascending. */
export function leavingEdges(nodes: number, triangles: Uint32Array): Graph {
  const start = new Uint32Array(nodes + 1);
  for (let e = 0; e < triangles.length; e++) start[triangles[e] + 1]++;
  for (let v = 0; v < nodes; v++) start[v + 1] += start[v];
  const filled = start.slice(0, nodes);
  const neighbour = new Uint32Array(triangles.length);
  for (let e = 0; e < triangles.length; e++) neighbour[filled[triangles[e]]++] = e;
  return { start, neighbour };
}

/**
 * Triangle across each edge; edge k of triangle t runs from its corner k to the next.
 *
 * @returns `Int32Array [3 * nTriangles]`, -1 where there is none
 */
export function triangleNeighbours(mesh: Mesh): Int32Array {
  const { triangles } = mesh;
  // The opposite of a half-edge a-b is among those that leave b.
  const { start, neighbour: leaving } = leavingEdges(mesh.x.length, triangles);
  const across = new Int32Array(triangles.length).fill(-1);
  for (let e = 0; e < triangles.length; e++) {
    const a = triangles[e];
    const b = triangles[nextEdge(e)];
    for (let i = start[b]; i < start[b + 1]; i++)
      if (triangles[nextEdge(leaving[i])] === a) across[e] = Math.floor(leaving[i] / 3);
  }
  return across;
}
