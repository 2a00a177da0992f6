import type { Mesh } from '../mesh/mesh.ts';

/** Coordinates of the corners of triangle t, `[3]` each, out. */
export function triangleCorners(
  { x, y, triangles }: Pick<Mesh, 'x' | 'y' | 'triangles'>,
  t: number,
  xe: Float64Array,
  ye: Float64Array,
): void {
  for (let c = 0; c < 3; c++) {
    const node = triangles[3 * t + c];
    xe[c] = x[node];
    ye[c] = y[node];
  }
}
