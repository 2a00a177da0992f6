import type { Mesh } from './mesh.ts';

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

  // An inner edge was entered from both its triangles.
  const start = new Uint32Array(n + 1);
  const neighbour = new Uint32Array(both.length);
  let count = 0;
  for (let v = 0; v < n; v++) {
    start[v] = count;
    const row = both.subarray(room[v], room[v + 1]).sort();
    for (let i = 0; i < row.length; i++) if (i === 0 || row[i] !== row[i - 1]) neighbour[count++] = row[i];
  }
  start[n] = count;
  return { start, neighbour: neighbour.slice(0, count) };
}

/**
 * Triangle across each edge; edge k of triangle t runs from its corner k to the next.
 *
 * @returns `Int32Array [3 * nTriangles]`, -1 where there is none
 */
export function triangleNeighbours(mesh: Mesh): Int32Array {
  const { triangles } = mesh;
  const n = mesh.x.length;
  // Half-edges listed by the node they start from; the opposite of a-b is among those of b.
  const start = new Uint32Array(n + 1);
  for (let e = 0; e < triangles.length; e++) start[triangles[e] + 1]++;
  for (let v = 0; v < n; v++) start[v + 1] += start[v];
  const filled = start.slice(0, n);
  const leaving = new Uint32Array(triangles.length);
  for (let e = 0; e < triangles.length; e++) leaving[filled[triangles[e]]++] = e;

  const across = new Int32Array(triangles.length).fill(-1);
  for (let e = 0; e < triangles.length; e++) {
    const a = triangles[e];
    const b = triangles[nextEdge(e)];
    for (let i = start[b]; i < start[b + 1]; i++)
      if (triangles[nextEdge(leaving[i])] === a) across[e] = Math.floor(leaving[i] / 3);
  }
  return across;
}

function nextEdge(e: number): number {
  return e % 3 === 2 ? e - 2 : e + 1;
}
