import type { Point, Ring } from '@flathead/solver';
import { barycentric, type Locator, locate, type Mesh, type Site } from '@flathead/solver';

/**
 * Line segments that lie on a face of the plate and move with it. Each vertex hangs on three nodes with weights that
 * sum to one, or to zero off the plate.
 */
export interface PlanLines {
  /** `[3 * nVertices]` at rest, mm; two vertices a segment. */
  readonly position: Float32Array;
  /** `[3 * nVertices]` nodes. */
  readonly anchor: Uint32Array;
  /** `[3 * nVertices]` */
  readonly weight: Float32Array;
}

/** Longest piece of a line that is drawn straight over the deflected face, mm. */
const PIECE = 1.5;

/** Closed rings laid on the face at height `z`, in pieces short enough to follow it. */
export function ringLines(rings: readonly Ring[], locator: Locator, z: number): PlanLines {
  const points: Point[] = [];
  for (const ring of rings)
    ring.forEach(([xa, ya], i) => {
      const [xb, yb] = ring[(i + 1) % ring.length];
      const pieces = Math.max(1, Math.ceil(Math.hypot(xb - xa, yb - ya) / PIECE));
      const at = (k: number): Point => [xa + ((xb - xa) * k) / pieces, ya + ((yb - ya) * k) / pieces];
      for (let k = 0; k < pieces; k++) points.push(at(k), at(k + 1));
    });
  const { mesh } = locator;
  const lines = emptyLines(points.length);
  points.forEach(([x, y], i) => {
    lines.position.set([x, y, z], 3 * i);
    const t = locate(locator, x, y);
    if (t < 0) return;
    lines.anchor.set(mesh.triangles.subarray(3 * t, 3 * t + 3), 3 * i);
    lines.weight.set(barycentric(mesh, t, x, y), 3 * i);
  });
  return lines;
}

/** Edges of the mesh laid at height `z`. @param edges `[2 * nEdges]` node pairs */
export function edgeLines({ x, y }: Mesh, edges: Uint32Array, z: number): PlanLines {
  const lines = emptyLines(edges.length);
  edges.forEach((v, i) => {
    lines.position.set([x[v], y[v], z], 3 * i);
    lines.anchor[3 * i] = v;
    lines.weight[3 * i] = 1;
  });
  return lines;
}

/** Deviation at the vertices of lines, as the stage uploads it. @param out `[3 * nVertices]` deviation, 0, 0 */
export function hangLines({ anchor, weight }: PlanLines, values: Float64Array, out: Float32Array): Float32Array {
  for (let i = 0; i < anchor.length; i += 3)
    out[i] =
      weight[i] * values[anchor[i]] + weight[i + 1] * values[anchor[i + 1]] + weight[i + 2] * values[anchor[i + 2]];
  return out;
}

/** Outline of each site's probe field. */
export function siteRings(sites: readonly Site[]): Ring[] {
  return sites.map(({ centre: [cx, cy], field: [width, height] }) => [
    [cx - width / 2, cy - height / 2],
    [cx + width / 2, cy - height / 2],
    [cx + width / 2, cy + height / 2],
    [cx - width / 2, cy + height / 2],
  ]);
}

/** The edges whose ends both belong to a set of triangles. */
export function edgesWithin(edges: Uint32Array, { x, triangles }: Mesh, within: Uint32Array): Uint32Array {
  const inside = new Uint8Array(x.length);
  for (const t of within) for (let k = 0; k < 3; k++) inside[triangles[3 * t + k]] = 1;
  return edges.filter((_, i) => inside[edges[i & ~1]] && inside[edges[i | 1]]);
}

function emptyLines(nVertices: number): PlanLines {
  return {
    position: new Float32Array(3 * nVertices),
    anchor: new Uint32Array(3 * nVertices),
    weight: new Float32Array(3 * nVertices),
  };
}
