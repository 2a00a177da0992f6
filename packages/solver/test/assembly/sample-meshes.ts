import type { Mesh } from '../../src/mesh/mesh.ts';

/**
 * Mesh of a mapped unit square, n by n cells of two triangles whose diagonals alternate.
 *
 * @param map from the unit square to the plate, keeping its sense
 */
export function mappedMesh(n: number, map: (s: number, t: number) => readonly [number, number], m = n): Mesh {
  const x: number[] = [];
  const y: number[] = [];
  for (let j = 0; j <= m; j++)
    for (let i = 0; i <= n; i++) {
      const [px, py] = map(i / n, j / m);
      x.push(px);
      y.push(py);
    }
  const node = (i: number, j: number): number => (n + 1) * j + i;
  const triangles: number[] = [];
  for (let j = 0; j < m; j++)
    for (let i = 0; i < n; i++) {
      const [a, b, c, d] = [node(i, j), node(i + 1, j), node(i + 1, j + 1), node(i, j + 1)];
      // Diagonals point to the centre, so that no corner is cut off by one triangle.
      if (2 * i + 1 < n === 2 * j + 1 < m) triangles.push(a, b, c, a, c, d);
      else triangles.push(a, b, d, b, c, d);
    }
  const boundary: number[] = [];
  for (let i = 0; i < n; i++) boundary.push(node(i, 0), node(i + 1, 0));
  for (let j = 0; j < m; j++) boundary.push(node(n, j), node(n, j + 1));
  for (let i = n; i > 0; i--) boundary.push(node(i, m), node(i - 1, m));
  for (let j = m; j > 0; j--) boundary.push(node(0, j), node(0, j - 1));
  return meshOf(x, y, triangles, boundary);
}

/** Rectangle `[0, width] x [0, height]`. */
export function rectangleMesh(n: number, width = 1, height = width, m = n): Mesh {
  return mappedMesh(n, (s, t) => [width * s, height * t], m);
}

/** A square of 10 mm with its inner nodes shaken: no two triangles alike. */
export function irregularMesh(n: number, shake = 0.25): Mesh {
  return mappedMesh(n, (s, t) => {
    const inside = s > 0 && s < 1 && t > 0 && t < 1 ? shake / n : 0;
    return [10 * (s + inside * Math.sin(37 * s + 91 * t)), 10 * (t + inside * Math.cos(53 * s - 29 * t))];
  });
}

/** Disc of radius 1 about the origin with `rings` rings of triangles, the outermost a regular polygon of 6 rings corners. */
export function discMesh(rings: number): Mesh {
  const x = [0];
  const y = [0];
  const first = [0];
  for (let r = 1; r <= rings; r++) {
    first.push(x.length);
    for (let c = 0; c < 6 * r; c++) {
      const angle = (Math.PI * c) / (3 * r);
      x.push((r / rings) * Math.cos(angle));
      y.push((r / rings) * Math.sin(angle));
    }
  }
  const node = (r: number, c: number): number => (r === 0 ? 0 : first[r] + (c % (6 * r)));
  const triangles: number[] = [];
  for (let r = 1; r <= rings; r++)
    for (let sector = 0; sector < 6; sector++)
      for (let c = 0; c < r; c++) {
        const outer = sector * r + c;
        const inner = sector * (r - 1) + c;
        triangles.push(node(r, outer), node(r, outer + 1), node(r - 1, inner));
        if (c < r - 1) triangles.push(node(r - 1, inner), node(r, outer + 1), node(r - 1, inner + 1));
      }
  const boundary: number[] = [];
  for (let c = 0; c < 6 * rings; c++) boundary.push(node(rings, c), node(rings, c + 1));
  return meshOf(x, y, triangles, boundary);
}

function meshOf(x: number[], y: number[], triangles: number[], boundary: number[]): Mesh {
  return {
    x: Float64Array.from(x),
    y: Float64Array.from(y),
    triangles: Uint32Array.from(triangles),
    region: new Uint32Array(triangles.length / 3),
    boundary: Uint32Array.from(boundary),
    minAngle: 0,
  };
}

/** Node nearest to a point. */
export function nearest({ x, y }: Mesh, px: number, py: number): number {
  let best = 0;
  for (let i = 1; i < x.length; i++)
    if (Math.hypot(x[i] - px, y[i] - py) < Math.hypot(x[best] - px, y[best] - py)) best = i;
  return best;
}
