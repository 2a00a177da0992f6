import type { Point, Ring } from '@flathead/solver';
import type { Mesh, Site } from '../solver-extras.ts';
import type { FieldSampler } from './field-sampler.ts';

/** Line segments that lie on a face of the plate and move with it. */
export interface PlanLines {
  /** `[3 * nVertices]` at rest, mm; two vertices a segment. */
  readonly position: Float32Array;
  /** `[3 * nVertices]` deviation, mm, and two zeros where solids have slopes. */
  readonly field: Float32Array;
}

/** Longest piece of a line that is drawn straight over the deflected face, mm. */
const PIECE = 1.5;

/** Closed rings laid on the face at height `z`, in pieces short enough to follow it. */
export function ringLines(rings: readonly Ring[], sampler: FieldSampler, z: number): PlanLines {
  const points: Point[] = [];
  for (const ring of rings)
    ring.forEach(([xa, ya], i) => {
      const [xb, yb] = ring[(i + 1) % ring.length];
      const pieces = Math.max(1, Math.ceil(Math.hypot(xb - xa, yb - ya) / PIECE));
      const at = (k: number): Point => [xa + ((xb - xa) * k) / pieces, ya + ((yb - ya) * k) / pieces];
      for (let k = 0; k < pieces; k++) points.push(at(k), at(k + 1));
    });
  return lines(points, z, ([x, y]) => sampler.at(x, y) ?? 0);
}

/** Edges of the mesh laid at height `z`. @param edges `[2 * nEdges]` node pairs */
export function edgeLines({ x, y }: Mesh, edges: Uint32Array, values: Float64Array, z: number): PlanLines {
  const position = new Float32Array(3 * edges.length);
  const field = new Float32Array(3 * edges.length);
  edges.forEach((v, i) => {
    position.set([x[v], y[v], z], 3 * i);
    field[3 * i] = values[v];
  });
  return { position, field };
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

function lines(points: readonly Point[], z: number, value: (point: Point) => number): PlanLines {
  const position = new Float32Array(3 * points.length);
  const field = new Float32Array(3 * points.length);
  points.forEach((point, i) => {
    position.set([...point, z], 3 * i);
    field[3 * i] = value(point);
  });
  return { position, field };
}
