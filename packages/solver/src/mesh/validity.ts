import type { Mesh } from './mesh.ts';

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
export function meshFaults({ x, y, triangles, region, boundary }: Mesh): readonly string[] {
  const faults: string[] = [];
  if (region.length * 3 !== triangles.length)
    faults.push(`${region.length} regions for ${triangles.length / 3} triangles`);
  const used = new Uint8Array(x.length);
  const edges = new Map<number, number>();
  const key = (a: number, b: number) => a * x.length + b;
  for (let i = 0; i < triangles.length; i += 3) {
    const [a, b, c] = [triangles[i], triangles[i + 1], triangles[i + 2]];
    const twice = (x[b] - x[a]) * (y[c] - y[a]) - (x[c] - x[a]) * (y[b] - y[a]);
    if (!(twice > 0)) faults.push(`triangle ${i / 3} at [${x[a]}, ${y[a]}] has the area ${twice / 2}`);
    for (const [p, q] of [
      [a, b],
      [b, c],
      [c, a],
    ]) {
      // biome-ignore format: three edges
      used[p] = 1;
      if (edges.has(key(p, q))) faults.push(`edge ${p}-${q} belongs to two triangles in the same sense`);
      edges.set(key(p, q), i / 3);
    }
  }
  used.forEach((is, v) => {
    if (is === 0) faults.push(`node ${v} at [${x[v]}, ${y[v]}] is in no triangle`);
  });
  const single = new Set<number>();
  for (const edge of edges.keys()) {
    const [a, b] = [Math.floor(edge / x.length), edge % x.length];
    if (!edges.has(key(b, a))) single.add(edge);
  }
  for (let i = 0; i < boundary.length; i += 2)
    if (!single.delete(key(boundary[i], boundary[i + 1])))
      faults.push(`boundary edge ${boundary[i]}-${boundary[i + 1]} is not the edge of one triangle`);
  for (const edge of single)
    faults.push(`edge ${Math.floor(edge / x.length)}-${edge % x.length} is missing from the boundary`);
  return faults;
}
