import { insideRing } from '../geometry/inside.ts';
import type { Ring } from '../geometry/point.ts';
import type { Mesh } from '../mesh/mesh.ts';

/**
 * Which section each triangle has: 0 the base section, r + 1 that of the last region r which holds it.
 *
 * An area such as a probe field hides the region below it in `mesh.region`; there the triangle's centroid decides.
 *
 * @returns `Uint32Array [nTriangles]`
 */
export function sectionIndex(mesh: Mesh, regions: readonly Ring[]): Uint32Array {
  const { x, y, triangles, region } = mesh;
  return region.map((index, t) => {
    if (index <= regions.length) return index;
    const [a, b, c] = triangles.subarray(3 * t, 3 * t + 3);
    const [px, py] = [(x[a] + x[b] + x[c]) / 3, (y[a] + y[b] + y[c]) / 3];
    return regions.findLastIndex((ring) => insideRing(ring, px, py)) + 1;
  });
}
