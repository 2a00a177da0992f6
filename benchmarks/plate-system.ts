import Delaunator from 'delaunator';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { BlockMatrix } from '../packages/solver/src/linear-algebra/block-matrix.ts';

/** A triangulated plate and a stiffness with the sparsity and the conditioning of plate bending. */
export interface PlateSystem {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly matrix: BlockMatrix;
}

export type Outline = 'rectangle' | 'strip' | 'holes' | 'notch' | 'graded';

/** Width over height of the bounding box, points kept, and how the spacing varies (1 = everywhere the same). */
const OUTLINES: Record<
  Outline,
  { aspect: number; keeps: (x: number, y: number) => boolean; spacing: (x: number, y: number) => number }
> = {
  rectangle: { aspect: 1.4, keeps: () => true, spacing: () => 1 },
  strip: { aspect: 12, keeps: () => true, spacing: () => 1 },
  // 5 x 2 windows between ribs, as a head with a site in each
  holes: {
    aspect: 2,
    keeps: (x, y) => Math.abs(((x * 5) % 1) - 0.5) > 0.33 || Math.abs(((y * 2) % 1) - 0.5) > 0.35,
    spacing: () => 1,
  },
  notch: { aspect: 1.4, keeps: (x, y) => x < 0.3 || y < 0.35, spacing: () => 1 },
  // refined around ten places, coarse between them
  graded: {
    aspect: 1.5,
    keeps: () => true,
    spacing: (x, y) => {
      const dx = ((x * 5) % 1) - 0.5;
      const dy = ((y * 2) % 1) - 0.5;
      return 0.15 + Math.min(1, 2.5 * Math.hypot(dx, dy));
    },
  },
};

/**
 * Jittered points in an outline, triangulated, every edge an Euler beam that bends and twists (a grillage: its three
 * zero-energy modes are the rigid motions of a plate), grounded by springs on w at three nodes far apart.
 */
export function plateSystem(outline: Outline, nodes: number, seed = 1): PlateSystem {
  const points = scatter(outline, nodes, seed);
  const { triangles } = Delaunator.from(points);
  const { keeps, aspect } = OUTLINES[outline];
  const edges = new Set<number>();
  for (let t = 0; t < triangles.length; t += 3) {
    const corners = [triangles[t], triangles[t + 1], triangles[t + 2]];
    const cx = corners.reduce((sum, v) => sum + points[v][0], 0) / 3;
    const cy = corners.reduce((sum, v) => sum + points[v][1], 0) / 3;
    if (!keeps(cx / aspect, cy)) continue;
    for (let k = 0; k < 3; k++) {
      const u = corners[k];
      const v = corners[(k + 1) % 3];
      edges.add(Math.max(u, v) * points.length + Math.min(u, v));
    }
  }
  const x = Float64Array.from(points, (p) => p[0]);
  const y = Float64Array.from(points, (p) => p[1]);
  return {
    x,
    y,
    matrix: grillage(
      x,
      y,
      [...edges].sort((a, b) => a - b),
    ),
  };
}

/** Points row by row with the local spacing, scaled until about as many come out as asked for. */
function scatter(outline: Outline, nodes: number, seed: number): [number, number][] {
  const { aspect, keeps, spacing } = OUTLINES[outline];
  let h = Math.sqrt(aspect / nodes);
  for (let trial = 0; ; trial++) {
    const generator = xoroshiro128plus(seed);
    const next = () => (generator.next() >>> 0) / 2 ** 32;
    const points: [number, number][] = [];
    // Cells of the coarsest spacing, each filled with a jittered grid as fine as its centre asks.
    const cell = 8 * h;
    for (let cy = 0; cy * cell < 1; cy++)
      for (let cx = 0; cx * cell < aspect; cx++) {
        const local = spacing(Math.min(1, ((cx + 0.5) * cell) / aspect), Math.min(1, (cy + 0.5) * cell));
        const k = Math.max(1, Math.round(8 / local));
        for (let j = 0; j < k; j++)
          for (let i = 0; i < k; i++) {
            const px = (cx + (i + 0.5 + 0.5 * (next() - 0.5)) / k) * cell;
            const py = (cy + (j + 0.5 + 0.5 * (next() - 0.5)) / k) * cell;
            if (px < aspect && py < 1 && keeps(px / aspect, py)) points.push([px, py]);
          }
      }
    if (trial === 6 || Math.abs(points.length / nodes - 1) < 0.01) return points;
    h *= Math.sqrt(points.length / nodes);
  }
}

/** Lower block rows of the beams' stiffness, all nodes that an edge meets; `edges` as `high * n + low`, ascending. */
function grillage(x: Float64Array, y: Float64Array, edges: readonly number[]): BlockMatrix {
  const n = x.length;
  const start = new Uint32Array(n + 1);
  for (const edge of edges) start[Math.floor(edge / n) + 1]++;
  for (let i = 0; i < n; i++) start[i + 1] += start[i] + 1;
  const column = new Uint32Array(start[n]);
  const value = new Float64Array(9 * start[n]);
  const fill = start.slice(0, n);
  const diagonal = (i: number) => 9 * (start[i + 1] - 1);
  for (const edge of edges) {
    const i = Math.floor(edge / n);
    const j = edge % n;
    const k = fill[i]++;
    column[k] = j;
    const l = Math.hypot(x[j] - x[i], y[j] - y[i]);
    const c = (x[j] - x[i]) / l;
    const s = (y[j] - y[i]) / l;
    // Slope along the beam s thetaX - c thetaY, twist c thetaX + s thetaY; rigidity of a strip as wide as the beam is long.
    const slopes = [0, s, -c];
    const twist = [0, c, s];
    const lift = [1, 0, 0];
    const bend = (sign: number, from: number, to: number) => (a: number, b: number) =>
      (sign * 12 * lift[a] * lift[b]) / (l * l) +
      (6 * (from * lift[a] * slopes[b] + to * slopes[a] * lift[b])) / l +
      (sign > 0 ? 4 : 2) * slopes[a] * slopes[b] +
      0.4 * sign * twist[a] * twist[b];
    const add = (at: number, block: (a: number, b: number) => number) => {
      for (let a = 0; a < 3; a++) for (let b = 0; b < 3; b++) value[at + 3 * a + b] += block(a, b);
    };
    add(diagonal(i), bend(1, 1, 1));
    add(diagonal(j), bend(1, -1, -1));
    add(9 * k, bend(-1, 1, -1));
  }
  for (let i = 0; i < n; i++) {
    column[start[i + 1] - 1] = i;
    // A vertex that no triangle kept meets is held by itself.
    if (value[diagonal(i)] === 0) for (let a = 0; a < 3; a++) value[diagonal(i) + 4 * a] = 1;
  }
  for (const [tx, ty] of [
    [0, 0],
    [1e3, 0],
    [0, 1e3],
  ]) {
    let nearest = 0;
    for (let i = 0; i < n; i++)
      if (Math.hypot(x[i] - tx, y[i] - ty) < Math.hypot(x[nearest] - tx, y[nearest] - ty)) nearest = i;
    value[diagonal(nearest)] *= 2;
  }
  return { n, start, column, value };
}
