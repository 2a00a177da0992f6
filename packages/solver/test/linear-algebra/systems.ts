import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { BlockMatrix } from '../../src/linear-algebra/block-matrix.ts';

/** Uniform numbers in [0, 1), seeded. */
export function uniform(seed: number): () => number {
  const generator = xoroshiro128plus(seed);
  return () => (generator.next() >>> 0) / 2 ** 32;
}

/** Undirected edges, any order. */
export type Edges = readonly (readonly [number, number])[];

/** Where test graphs are drawn. */
export interface Drawing {
  readonly n: number;
  readonly edges: Edges;
  readonly x: Float64Array;
  readonly y: Float64Array;
}

/** Symmetric positive definite blocks on given edges: random off-diagonal blocks, diagonally dominant by `margin`. */
export function randomSystem(n: number, edges: Edges, seed: number, margin = 0.1): BlockMatrix {
  const next = uniform(seed);
  const rows = Array.from({ length: n }, (_, i) => new Map<number, number[]>([[i, new Array(9).fill(0)]]));
  const sum = new Float64Array(3 * n);
  for (const [u, v] of edges) {
    const i = Math.max(u, v);
    const j = Math.min(u, v);
    if (i === j || rows[i].has(j)) continue;
    const block = Array.from({ length: 9 }, () => 2 * next() - 1);
    rows[i].set(j, block);
    for (let a = 0; a < 3; a++)
      for (let b = 0; b < 3; b++) {
        sum[3 * i + a] += Math.abs(block[3 * a + b]);
        sum[3 * j + b] += Math.abs(block[3 * a + b]);
      }
  }
  for (let i = 0; i < n; i++) {
    const d = rows[i].get(i) as number[];
    for (let a = 0; a < 3; a++)
      for (let b = 0; b < a; b++) {
        d[3 * a + b] = d[3 * b + a] = 2 * next() - 1;
        sum[3 * i + a] += Math.abs(d[3 * a + b]);
        sum[3 * i + b] += Math.abs(d[3 * a + b]);
      }
    for (let a = 0; a < 3; a++) d[4 * a] = sum[3 * i + a] + margin;
  }
  return assemble(rows);
}

/** Matrix from block rows given as column -> row-major block. */
function assemble(rows: readonly Map<number, number[]>[]): BlockMatrix {
  const start = [0];
  const column: number[] = [];
  const value: number[] = [];
  for (const row of rows) {
    for (const j of [...row.keys()].sort((p, q) => p - q)) {
      column.push(j);
      value.push(...(row.get(j) as number[]));
    }
    start.push(column.length);
  }
  return {
    n: rows.length,
    start: Uint32Array.from(start),
    column: Uint32Array.from(column),
    value: Float64Array.from(value),
  };
}

/** Dense copy, row-major arrays. */
export function dense({ n, start, column, value }: BlockMatrix): number[][] {
  const full = Array.from({ length: 3 * n }, () => new Array<number>(3 * n).fill(0));
  for (let i = 0; i < n; i++)
    for (let k = start[i]; k < start[i + 1]; k++)
      for (let a = 0; a < 3; a++)
        for (let b = 0; b < 3; b++) {
          full[3 * i + a][3 * column[k] + b] = value[9 * k + 3 * a + b];
          full[3 * column[k] + b][3 * i + a] = value[9 * k + 3 * a + b];
        }
  return full;
}

/** Triangulated grid of `nx` by `ny` vertices, jittered by up to a quarter of the spacing. */
export function grid(nx: number, ny: number, seed = 1): Drawing {
  const next = uniform(seed);
  const n = nx * ny;
  const x = new Float64Array(n);
  const y = new Float64Array(n);
  const edges: [number, number][] = [];
  for (let j = 0; j < ny; j++)
    for (let i = 0; i < nx; i++) {
      const v = j * nx + i;
      x[v] = i + 0.5 * (next() - 0.5);
      y[v] = j + 0.5 * (next() - 0.5);
      if (i > 0) edges.push([v - 1, v]);
      if (j > 0) edges.push([v - nx, v]);
      if (i > 0 && j > 0) edges.push((i + j) % 2 === 0 ? [v - nx - 1, v] : [v - nx, v - 1]);
    }
  return { n, edges, x, y };
}

/** Path 0 - 1 - ... - n-1. */
export function chain(n: number): Drawing {
  const x = Float64Array.from({ length: n }, (_, i) => i);
  return { n, edges: Array.from({ length: n - 1 }, (_, i) => [i, i + 1] as const), x, y: new Float64Array(n) };
}

/** One hub that meets everyone else. */
export function arrow(n: number): Drawing {
  const x = Float64Array.from({ length: n }, (_, i) => Math.cos(i));
  const y = Float64Array.from({ length: n }, (_, i) => Math.sin(i));
  return { n, edges: Array.from({ length: n - 1 }, (_, i) => [0, i + 1] as const), x, y };
}

/** Random graph with random coordinates, which need not suit it. */
export function randomDrawing(n: number, nEdges: number, seed: number): Drawing {
  const next = uniform(seed);
  const x = Float64Array.from({ length: n }, () => next());
  const y = Float64Array.from({ length: n }, () => next());
  const edges = Array.from({ length: nEdges }, () => [Math.floor(next() * n), Math.floor(next() * n)] as const);
  return { n, edges, x, y };
}

/**
 * Grillage: every edge a beam that bends and twists, `[phi phi' + 3 psi psi' + 0.4 tau tau']` with the relative rotation
 * phi, the antisymmetric bending psi and the relative twist tau (Hermite beam, rigidity as wide as it is long). Its
 * only zero-energy motions are those of a rigid plate when the graph is connected and not on one line.
 */
export function grillage({ n, edges, x, y }: Drawing): BlockMatrix {
  const rows = Array.from({ length: n }, (_, i) => new Map<number, number[]>([[i, new Array(9).fill(0)]]));
  for (const [u, v] of edges) {
    const i = Math.max(u, v);
    const j = Math.min(u, v);
    if (i === j || rows[i].has(j)) continue;
    rows[i].set(j, new Array(9).fill(0));
    const l = Math.hypot(x[i] - x[j], y[i] - y[j]);
    const c = (x[i] - x[j]) / l;
    const s = (y[i] - y[j]) / l;
    // Slope along the beam dw/dt = s thetaX - c thetaY; twist c thetaX + s thetaY; dofs of j, then of i.
    const phi = [0, -s, c, 0, s, -c];
    const psi = [2 / l, s, -c, -2 / l, s, -c];
    const tau = [0, -c, -s, 0, c, s];
    const node = [j, i];
    for (let p = 0; p < 6; p++)
      for (let q = 0; q < 6; q++) {
        const row = node[Math.floor(p / 3)];
        const column = node[Math.floor(q / 3)];
        if (row < column) continue;
        const block = rows[row].get(column) as number[];
        block[3 * (p % 3) + (q % 3)] += phi[p] * phi[q] + 3 * psi[p] * psi[q] + 0.4 * tau[p] * tau[q];
      }
  }
  return assemble(rows);
}
