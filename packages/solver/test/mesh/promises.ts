import { insideRegion } from '../../src/geometry/inside.ts';
import { vertexGraph } from '../../src/mesh/adjacency.ts';
import type { Arrangement } from '../../src/mesh/arrangement.ts';
import type { MeshDomain } from '../../src/mesh/domain.ts';
import type { Mesh } from '../../src/mesh/mesh.ts';

/** `[regions + 1]` area of each region in the mesh, the base first. */
export function regionAreas({ x, y, triangles, region }: Mesh, regions: number): Float64Array {
  const areas = new Float64Array(regions + 1);
  for (let t = 0; t < region.length; t++) {
    const [a, b, c] = [triangles[3 * t], triangles[3 * t + 1], triangles[3 * t + 2]];
    areas[region[t]] += ((x[b] - x[a]) * (y[c] - y[a]) - (x[c] - x[a]) * (y[b] - y[a])) / 2;
  }
  return areas;
}

export function sum(values: ArrayLike<number>): number {
  return Array.from(values).reduce((total, value) => total + value, 0);
}

/** Segments on the plate that are no chain of mesh edges, in words. */
export function lostSegments(mesh: Mesh, domain: MeshDomain, { x, y, segments, bounds }: Arrangement): string[] {
  const { start, neighbour } = vertexGraph(mesh);
  const nodeAt = new Map<string, number>();
  for (let v = 0; v < mesh.x.length; v++) nodeAt.set(`${mesh.x[v]},${mesh.y[v]}`, v);
  const lost: string[] = [];
  for (let s = 0; s < bounds.length; s++) {
    const [a, b] = [segments[2 * s], segments[2 * s + 1]];
    const onOutline = bounds[s].some((ring, i) => i % 2 === 0 && ring === 0);
    if (!onOutline && !insideRegion(domain.outline, (x[a] + x[b]) / 2, (y[a] + y[b]) / 2)) continue;
    const end = nodeAt.get(`${x[b]},${y[b]}`);
    let at = nodeAt.get(`${x[a]},${y[a]}`);
    const length = Math.hypot(x[b] - x[a], y[b] - y[a]);
    const [ux, uy] = [(x[b] - x[a]) / length, (y[b] - y[a]) / length];
    while (at !== undefined && at !== end) {
      const here = at;
      at = undefined;
      for (let i = start[here]; i < start[here + 1]; i++) {
        const v = neighbour[i];
        const [dx, dy] = [mesh.x[v] - x[a], mesh.y[v] - y[a]];
        const forward = (mesh.x[v] - mesh.x[here]) * ux + (mesh.y[v] - mesh.y[here]) * uy;
        if (forward > 0 && Math.abs(dx * uy - dy * ux) < 1e-12 * (length + Math.abs(x[a]) + Math.abs(y[a]))) at = v;
      }
    }
    if (at === undefined) lost.push(`segment ${s} from [${x[a]}, ${y[a]}] to [${x[b]}, ${y[b]}]`);
  }
  return lost;
}

/**
 * Triangles with an angle below `least` degrees that no corner of the input sharper than `corner` degrees excuses: the
 * shortest edge must run from one side of such a corner to the other.
 */
export function thinTriangles(mesh: Mesh, { x, y, segments }: Arrangement, least: number, corner: number): string[] {
  const corners = sharpCorners({ x, y, segments }, corner);
  const near = (v: number, a: number, b: number) => {
    const [dx, dy] = [x[b] - x[a], y[b] - y[a]];
    const t = Math.max(0, Math.min(1, ((mesh.x[v] - x[a]) * dx + (mesh.y[v] - y[a]) * dy) / (dx * dx + dy * dy)));
    return Math.hypot(mesh.x[v] - x[a] - t * dx, mesh.y[v] - y[a] - t * dy) < 1e-9 * (Math.hypot(dx, dy) + 1);
  };
  const thin: string[] = [];
  for (let i = 0; i < mesh.triangles.length; i += 3) {
    const nodes = [mesh.triangles[i], mesh.triangles[i + 1], mesh.triangles[i + 2]];
    const edges = nodes.map((v, k) => {
      const w = nodes[(k + 1) % 3];
      return { v, w, length: Math.hypot(mesh.x[w] - mesh.x[v], mesh.y[w] - mesh.y[v]) };
    });
    const [{ v, w, length }, middle, longest] = edges.sort((p, q) => p.length - q.length);
    const cosine = (middle.length ** 2 + longest.length ** 2 - length ** 2) / (2 * middle.length * longest.length);
    const angle = (Math.acos(Math.min(1, cosine)) * 180) / Math.PI;
    if (angle >= least - 1e-6) continue;
    const excused = corners.some(([c, a, b]) => (near(v, c, a) && near(w, c, b)) || (near(v, c, b) && near(w, c, a)));
    if (!excused) thin.push(`${angle.toFixed(2)} degrees at [${mesh.x[v]}, ${mesh.y[v]}]`);
  }
  return thin;
}

/** Corner and the far ends of its two sides, for every corner sharper than `most` degrees. */
function sharpCorners(
  { x, y, segments }: Pick<Arrangement, 'x' | 'y' | 'segments'>,
  most: number,
): (readonly [number, number, number])[] {
  const ends: number[][] = Array.from(x, () => []);
  for (let i = 0; i < segments.length; i += 2) {
    ends[segments[i]].push(segments[i + 1]);
    ends[segments[i + 1]].push(segments[i]);
  }
  return ends.flatMap((others, v) => {
    const turns = others
      .map((other) => ({ other, at: Math.atan2(y[other] - y[v], x[other] - x[v]) }))
      .sort((p, q) => p.at - q.at);
    return turns.flatMap(({ other, at }, i) => {
      const next = turns[(i + 1) % turns.length];
      const angle = ((next.at - at + (i + 1 < turns.length ? 0 : 2 * Math.PI)) * 180) / Math.PI;
      return turns.length > 1 && angle < most ? [[v, other, next.other] as const] : [];
    });
  });
}
