import type { Mesh } from '../mesh/mesh.ts';

/** Part of the mesh that results are measured on, such as one probe field. */
export interface SampleArea {
  readonly name: string;
  readonly triangles: Uint32Array;
  /** Nodes of its triangles, ascending, each once. */
  readonly nodes: Uint32Array;
  /** `[2 * nSides]` node pairs of the sides of its triangles, each once. */
  readonly sides: Uint32Array;
}

/**
 * Triangles and nodes of the areas that follow the regions of the problem in the mesh.
 *
 * @param firstRegion region index of the first area in `mesh.region`
 */
export function sampleAreas(mesh: Mesh, firstRegion: number, names: readonly string[]): SampleArea[] {
  const triangles: number[][] = names.map(() => []);
  for (let t = 0; t < mesh.region.length; t++) {
    const area = mesh.region[t] - firstRegion;
    if (area >= 0) triangles[area].push(t);
  }
  return names.map((name, i) => {
    const nodes = new Set<number>();
    for (const t of triangles[i]) for (let corner = 0; corner < 3; corner++) nodes.add(mesh.triangles[3 * t + corner]);
    return {
      name,
      triangles: Uint32Array.from(triangles[i]),
      nodes: Uint32Array.from(nodes).sort(),
      sides: sidesOf(mesh, triangles[i]),
    };
  });
}

function sidesOf({ x, triangles }: Mesh, area: readonly number[]): Uint32Array {
  const seen = new Set<number>();
  const pairs: number[] = [];
  for (const t of area)
    for (let corner = 0; corner < 3; corner++) {
      const a = triangles[3 * t + corner];
      const b = triangles[3 * t + (corner === 2 ? 0 : corner + 1)];
      const side = Math.min(a, b) * x.length + Math.max(a, b);
      if (seen.has(side)) continue;
      seen.add(side);
      pairs.push(a, b);
    }
  return Uint32Array.from(pairs);
}
