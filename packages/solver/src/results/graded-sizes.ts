import type { Mesh } from '../mesh/mesh.ts';

/** Element sizes change by at most these factors in one round: what an indicator says of far finer ones is a guess. */
const [FINER, COARSER] = [1 / 6, 2];

/**
 * Element sizes for an error of `ratio` times what the elements add up to now, with as few elements as possible.
 *
 * An element of size h and area A adds `eta = c A h^2`. Sizes that make `sum c A h^2` what is asked for with the
 * fewest elements, `sum A / h^2`, are `h = s c^(-1/4)` (Lagrange).
 *
 * @param eta `[nTriangles]`
 * @returns `[nNodes]` mm
 */
export function gradedSizes(mesh: Mesh, eta: Float64Array, ratio: number): Float64Array {
  const { x, y, triangles } = mesh;
  const area = Float64Array.from(eta, (_, t) => {
    const [a, b, c] = [triangles[3 * t], triangles[3 * t + 1], triangles[3 * t + 2]];
    return ((x[b] - x[a]) * (y[c] - y[a]) - (x[c] - x[a]) * (y[b] - y[a])) / 2;
  });
  // Edge of the equilateral triangle of that area.
  const size = area.map((A) => Math.sqrt((4 * A) / Math.sqrt(3)));
  const density = eta.map((value, t) => value / (area[t] * size[t] ** 2));
  const total = eta.reduce((sum, value) => sum + value, 0);
  const spread = density.reduce((sum, c, t) => sum + Math.sqrt(c) * area[t], 0);
  const scale = Math.sqrt((ratio * total) / spread);
  const nodal = new Float64Array(x.length).fill(Infinity);
  for (let t = 0; t < eta.length; t++) {
    const wanted = density[t] > 0 ? scale * density[t] ** -0.25 : Infinity;
    const bounded = Math.min(COARSER * size[t], Math.max(FINER * size[t], wanted));
    for (let corner = 0; corner < 3; corner++) {
      const node = triangles[3 * t + corner];
      nodal[node] = Math.min(nodal[node], bounded);
    }
  }
  return nodal;
}
