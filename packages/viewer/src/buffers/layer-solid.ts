import type { Mesh } from '@flathead/solver';

/** Triangle mesh of a solid layer. Each vertex belongs to a node of the plate mesh, whose deflection moves it. */
export interface LayerSolid {
  /** `[3 * nVertices]` at rest, mm. */
  readonly position: Float32Array;
  /** `[3 * nVertices]` unit normal at rest. */
  readonly normal: Float32Array;
  /** `[nVertices]` node of the plate mesh. */
  readonly node: Uint32Array;
  /** `[3 * nFaces]` outward. */
  readonly index: Uint32Array;
}

/** `[2 * nEdges]` node pairs around a set of triangles, the set on the left. */
export function rimEdges(mesh: Mesh, triangles: Uint32Array): Uint32Array {
  const nNodes = mesh.x.length;
  const open = new Map<number, readonly [number, number]>();
  for (const t of triangles)
    for (let k = 0; k < 3; k++) {
      const a = mesh.triangles[3 * t + k];
      const b = mesh.triangles[3 * t + ((k + 1) % 3)];
      if (!open.delete(b * nNodes + a)) open.set(a * nNodes + b, [a, b]);
    }
  return Uint32Array.from([...open.values()].flat());
}

/**
 * Closed solid over some triangles of the plate mesh, between two heights: top, bottom, and walls around the rim.
 *
 * @param triangles `[n]` indices of triangles
 * @param rim `[2 * nEdges]` of {@link rimEdges}
 */
export function layerSolid(
  mesh: Mesh,
  triangles: Uint32Array,
  rim: Uint32Array,
  bottom: number,
  top: number,
): LayerSolid {
  const { x, y } = mesh;
  const slot = new Int32Array(x.length).fill(-1);
  const used: number[] = [];
  for (const t of triangles)
    for (let k = 0; k < 3; k++) {
      const v = mesh.triangles[3 * t + k];
      if (slot[v] >= 0) continue;
      slot[v] = used.length;
      used.push(v);
    }
  const nFlat = used.length;
  const nWall = rim.length / 2;
  const nVertices = 2 * nFlat + 4 * nWall;
  const position = new Float32Array(3 * nVertices);
  const normal = new Float32Array(3 * nVertices);
  const node = new Uint32Array(nVertices);
  const index = new Uint32Array(6 * triangles.length + 6 * nWall);

  const vertex = (at: number, v: number, z: number, n: readonly [number, number, number]): void => {
    position.set([x[v], y[v], z], 3 * at);
    normal.set(n, 3 * at);
    node[at] = v;
  };
  used.forEach((v, i) => {
    vertex(i, v, top, [0, 0, 1]);
    vertex(nFlat + i, v, bottom, [0, 0, -1]);
  });
  let next = 0;
  for (const t of triangles) {
    const [a, b, c] = [0, 1, 2].map((k) => slot[mesh.triangles[3 * t + k]]);
    index.set([a, b, c, nFlat + a, nFlat + c, nFlat + b], next);
    next += 6;
  }
  for (let e = 0; e < nWall; e++) {
    const [a, b] = [rim[2 * e], rim[2 * e + 1]];
    const length = Math.hypot(x[b] - x[a], y[b] - y[a]);
    const outward = [(y[b] - y[a]) / length, (x[a] - x[b]) / length, 0] as const;
    const first = 2 * nFlat + 4 * e;
    vertex(first, a, bottom, outward);
    vertex(first + 1, b, bottom, outward);
    vertex(first + 2, b, top, outward);
    vertex(first + 3, a, top, outward);
    index.set([first, first + 1, first + 2, first, first + 2, first + 3], next);
    next += 6;
  }
  return { position, normal, node, index };
}
