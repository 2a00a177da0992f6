import type { Mesh } from '@flathead/solver';

/**
 * Slopes of a nodal field, for shading: area-weighted mean of the gradients of the triangles around each node.
 *
 * @param values `[nNodes]`
 * @returns `[2 * nNodes]` d/dx, d/dy
 */
export function nodalSlopes({ x, y, triangles }: Mesh, values: Float64Array): Float32Array {
  const slopes = new Float32Array(2 * x.length);
  const area = new Float64Array(x.length);
  for (let t = 0; t < triangles.length; t += 3) {
    const a = triangles[t];
    const b = triangles[t + 1];
    const c = triangles[t + 2];
    const xab = x[b] - x[a];
    const yab = y[b] - y[a];
    const xac = x[c] - x[a];
    const yac = y[c] - y[a];
    const fab = values[b] - values[a];
    const fac = values[c] - values[a];
    const twice = xab * yac - xac * yab;
    // Gradient times twice the area.
    const gx = fab * yac - fac * yab;
    const gy = xab * fac - xac * fab;
    // Runs with every answer of a drag: arrays to take apart here were 3 MB of garbage each time.
    for (let corner = t; corner < t + 3; corner++) {
      const v = triangles[corner];
      slopes[2 * v] += gx;
      slopes[2 * v + 1] += gy;
      area[v] += twice;
    }
  }
  for (let v = 0; v < x.length; v++) {
    if (area[v] === 0) continue;
    slopes[2 * v] /= area[v];
    slopes[2 * v + 1] /= area[v];
  }
  return slopes;
}

/**
 * Deviation, slopes and what the colours show at the vertices of a solid, as the stage uploads them.
 *
 * @param node `[nVertices]` node of each vertex
 * @param paint `[nNodes]`
 * @param out `[4 * nVertices]` deviation, d/dx, d/dy, paint
 */
export function gatherField(
  node: Uint32Array,
  values: Float64Array,
  slopes: Float32Array,
  paint: Float64Array,
  out: Float32Array,
): Float32Array {
  for (let i = 0; i < node.length; i++) {
    const v = node[i];
    out[4 * i] = values[v];
    out[4 * i + 1] = slopes[2 * v];
    out[4 * i + 2] = slopes[2 * v + 1];
    out[4 * i + 3] = paint[v];
  }
  return out;
}
