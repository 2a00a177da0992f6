import type { Mesh } from '../mesh/mesh.ts';

/** Corners of triangles that meet at a node and have the same section: what is smoothed together. */
export interface CornerGroups {
  /** `[3 * nTriangles]` group of each corner. */
  readonly of: Uint32Array;
  /** `[nGroups]` one corner `3 * t + c` of each group. */
  readonly corner: Uint32Array;
}

/** @param mesh its `region` is the section of each triangle */
export function cornerGroups({ x, triangles, region }: Pick<Mesh, 'x' | 'triangles' | 'region'>): CornerGroups {
  const of = new Uint32Array(triangles.length);
  const corner = new Uint32Array(triangles.length);
  // The groups at a node as a list, newest first.
  const newest = new Int32Array(x.length).fill(-1);
  const before = new Int32Array(triangles.length);
  let count = 0;
  for (let t = 0; t < region.length; t++)
    for (let at = 3 * t; at < 3 * t + 3; at++) {
      const node = triangles[at];
      let group = newest[node];
      while (group >= 0 && region[Math.floor(corner[group] / 3)] !== region[t]) group = before[group];
      if (group < 0) {
        group = count++;
        corner[group] = at;
        before[group] = newest[node];
        newest[node] = group;
      }
      of[at] = group;
    }
  return { of, corner: corner.slice(0, count) };
}
