import { leavingEdges } from './adjacency.ts';
import type { Mesh } from './mesh.ts';
import { nextEdge } from './triangulation.ts';

/** Parts of a mesh that share no node. */
export interface Components {
  readonly count: number;
  /** `[nNodes]` part of each node, numbered in order of their first node. */
  readonly label: Uint32Array;
}

/** Connected parts of a mesh, by union of the nodes of each triangle. */
export function components({ x, triangles }: Mesh): Components {
  const parent = Uint32Array.from(x.keys());
  const root = (v: number): number => {
    let r = v;
    while (parent[r] !== r) {
      parent[r] = parent[parent[r]];
      r = parent[r];
    }
    return r;
  };
  for (let i = 0; i < triangles.length; i += 3)
    for (let k = 1; k < 3; k++) {
      const [a, b] = [root(triangles[i]), root(triangles[i + k])];
      if (a < b) parent[b] = a;
      else parent[a] = b;
    }
  // Every root is the lowest node of its part, so it is labelled first.
  const label = new Uint32Array(x.length);
  let count = 0;
  for (let v = 0; v < x.length; v++) label[v] = root(v) === v ? count++ : label[root(v)];
  return { count, label };
}

/**
 * What is wrong with a mesh as a mesh, in words; empty when it is conforming.
 *
 * Checks that every triangle has a positive area, every edge one or two triangles with opposite senses, that the
 * boundary lists exactly the edges with one, and that every node is used.
 */
export function meshFaults(mesh: Mesh): readonly string[] {
  const { x, y, triangles, region, boundary } = mesh;
  const faults: string[] = [];
  if (3 * region.length !== triangles.length)
    faults.push(`${region.length} regions for ${triangles.length / 3} triangles`);
  const { start, neighbour: leaving } = leavingEdges(x.length, triangles);
  /** Number of triangles that have the edge in the sense a to b. */
  const edgesFrom = (a: number, b: number): number => {
    let count = 0;
    for (let i = start[a]; i < start[a + 1]; i++) if (triangles[nextEdge(leaving[i])] === b) count++;
    return count;
  };
  let single = 0;
  for (let e = 0; e < triangles.length; e++) {
    const [a, b, c] = [triangles[e], triangles[nextEdge(e)], triangles[nextEdge(nextEdge(e))]];
    if (edgesFrom(a, b) !== 1) faults.push(`edge ${a}-${b} belongs to several triangles in the same sense`);
    if (edgesFrom(b, a) === 0) single++;
    if (e % 3 !== 0) continue;
    const twice = (x[b] - x[a]) * (y[c] - y[a]) - (x[c] - x[a]) * (y[b] - y[a]);
    if (!(twice > 0)) faults.push(`triangle ${e / 3} at [${x[a]}, ${y[a]}] has the area ${twice / 2}`);
  }
  for (let v = 0; v < x.length; v++)
    if (start[v] === start[v + 1]) faults.push(`node ${v} at [${x[v]}, ${y[v]}] is in no triangle`);
  for (let i = 0; i < boundary.length; i += 2) {
    const [a, b] = [boundary[i], boundary[i + 1]];
    if (edgesFrom(a, b) !== 1 || edgesFrom(b, a) !== 0)
      faults.push(`boundary edge ${a}-${b} is not the edge of one triangle`);
  }
  if (2 * single !== boundary.length)
    faults.push(`${boundary.length / 2} boundary edges, where ${single} edges have one triangle`);
  return faults;
}
