import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { columnCounts } from '../../src/linear-algebra/column-count.ts';
import { eliminationTree, postorder } from '../../src/linear-algebra/elimination-tree.ts';
import { rectangleSize, triangleSize } from '../../src/linear-algebra/front-layout.ts';
import { graphOf } from '../../src/linear-algebra/graph.ts';
import { minimumDegree } from '../../src/linear-algebra/minimum-degree.ts';
import { order } from '../../src/linear-algebra/order.ts';
import { analyse } from '../../src/linear-algebra/symbolic.ts';
import { fill, inverse } from './fill.ts';
import { type Drawing, grid, randomDrawing, randomSystem } from './systems.ts';

/** Structure of the factor by eliminating in a dense table: `filled[i][j]` for i >= j in elimination order. */
function filled({ n, edges }: Drawing, permutation: Uint32Array): boolean[][] {
  const position = inverse(permutation);
  const L = Array.from({ length: n }, (_, i) => Array.from({ length: n }, (_, j) => i === j));
  for (const [u, v] of edges) {
    const [i, j] = [position[u], position[v]];
    L[Math.max(i, j)][Math.min(i, j)] = true;
  }
  for (let j = 0; j < n; j++)
    for (let i = j + 1; i < n; i++) if (L[i][j]) for (let k = i; k < n; k++) if (L[k][j]) L[k][i] = true;
  return L;
}

const anyDrawing = fc
  .record({
    n: fc.integer({ min: 1, max: 60 }),
    edges: fc.integer({ min: 0, max: 150 }),
    seed: fc.integer({ min: 0, max: 1e6 }),
  })
  .map(({ n, edges, seed }) => randomDrawing(n, edges, seed));

/** A grid of so many nodes, analysed. */
function gridOf(columns: number, rows: number) {
  const drawing = grid(columns, rows);
  const K = randomSystem(drawing.n, drawing.edges, 1);
  return analyse(K, order(graphOf(K), drawing.x, drawing.y));
}

describe('symbolic factorisation', () => {
  it('finds the elimination tree and the column counts of the dense table', () => {
    fc.assert(
      fc.property(anyDrawing, (drawing) => {
        const graph = graphOf(randomSystem(drawing.n, drawing.edges, 1));
        const given = order(graph, drawing.x, drawing.y);
        const tree = eliminationTree(graph, given, inverse(given));
        const permutation = postorder(tree).map((k) => given[k]);
        const L = filled(drawing, permutation);
        const parent = eliminationTree(graph, permutation, inverse(permutation));
        const count = columnCounts(graph, permutation, inverse(permutation), parent);
        for (let j = 0; j < drawing.n; j++) {
          // Liu 1990: the parent of j is the first row below the diagonal of column j.
          expect(parent[j]).toBe(L.findIndex((row, i) => i > j && row[j]));
          expect(count[j]).toBe(L.filter((row) => row[j]).length);
        }
      }),
      { numRuns: 80, seed: 5 },
    );
  });

  it('gives every supernode the rows of its columns, in ascending order', () => {
    fc.assert(
      fc.property(anyDrawing, (drawing) => {
        const K = randomSystem(drawing.n, drawing.edges, 1);
        const { first, parent, rowStart, row, relative, permutation, position } = analyse(
          K,
          order(graphOf(K), drawing.x, drawing.y),
        );
        expect(position).toEqual(inverse(permutation));
        const L = filled(drawing, permutation);
        for (let s = 0; s < parent.length; s++) {
          const rows = row.subarray(rowStart[s], rowStart[s + 1]);
          expect(Array.from(rows)).toEqual(Array.from(rows).sort((a, b) => a - b));
          for (let j = first[s]; j < first[s + 1]; j++)
            for (let i = first[s + 1]; i < drawing.n; i++) if (L[i][j]) expect(rows).toContain(i);
          if (rows.length === 0) {
            expect(parent[s]).toBe(-1);
            continue;
          }
          const p = parent[s];
          const front = [
            ...Array.from({ length: first[p + 1] - first[p] }, (_, k) => first[p] + k),
            ...row.subarray(rowStart[p], rowStart[p + 1]),
          ];
          rows.forEach((i, k) => {
            expect(front[relative[rowStart[s] + k]]).toBe(i);
          });
        }
      }),
      { numRuns: 80, seed: 6 },
    );
  });

  it('lays the fronts of the factor one after another as a backward solve meets them', () => {
    const { parent, first, rowStart, pivotAt, belowAt, factorSize } = gridOf(25, 40);
    let end = 0;
    for (let s = parent.length - 1; s >= 0; s--) {
      const width = first[s + 1] - first[s];
      expect(belowAt[s]).toBe(end);
      expect(pivotAt[s]).toBe(end + rectangleSize(rowStart[s + 1] - rowStart[s], width));
      end = pivotAt[s] + triangleSize(width);
    }
    expect(end).toBe(factorSize);
  });

  for (const [columns, rows] of [
    [25, 40],
    [110, 100],
  ])
    it(`does every front of ${columns} by ${rows} nodes once, children first, and never lets two live updates overlap`, () => {
      const { parent, rowStart, schedule } = gridOf(columns, rows);
      const { task, top, updateAt, stackSize, poolSize } = schedule;
      const size = (s: number) => triangleSize(rowStart[s + 1] - rowStart[s]);
      const done = new Uint8Array(parent.length);
      let all = 0;
      let faults = 0;
      const enter = (s: number, memory: Int32Array, at: number) => {
        for (let c = 0; c < s; c++) if (parent[c] === s && done[c] !== 1) faults++;
        done[s]++;
        all += size(s);
        for (let k = at; k < at + size(s); k++) {
          // Free, or the update of a supernode whose parent has been assembled already.
          if (memory[k] >= 0 && (done[parent[memory[k]]] === 0 || parent[memory[k]] === s)) faults++;
          memory[k] = s;
        }
        if (at + size(s) > memory.length) faults++;
      };
      const common = new Int32Array(poolSize).fill(-1);
      for (let k = 0; k < task.length; k += 2) {
        const stack = new Int32Array(stackSize).fill(-1);
        for (let s = task[k]; s < task[k + 1] - 1; s++) enter(s, stack, updateAt[s]);
        enter(task[k + 1] - 1, common, updateAt[task[k + 1] - 1]);
      }
      for (const s of top) enter(s, common, updateAt[s]);
      expect(done.every((times) => times === 1)).toBe(true);
      expect(faults).toBe(0);
      // Room given back is used again.
      expect(stackSize + poolSize).toBeLessThan(all / 2.5);
      expect(top.length > 0).toBe(columns > 100);
    });

  it('joins supernodes at the cost of some zeros', () => {
    const drawing = grid(50, 50);
    const K = randomSystem(drawing.n, drawing.edges, 1);
    const permutation = order(graphOf(K), drawing.x, drawing.y);
    const symbolic = analyse(K, permutation);
    const exact = 9 * fill(graphOf(K), permutation).blocks - 3 * drawing.n;
    expect(symbolic.nonZeros).toBeGreaterThanOrEqual(exact);
    expect(symbolic.nonZeros).toBeLessThan(1.3 * exact);
    expect(symbolic.parent.length).toBeLessThan(drawing.n / 3);
  });
});

describe('minimumDegree', () => {
  it('always takes a vertex of the least degree, the halo counted', () => {
    fc.assert(
      fc.property(anyDrawing, fc.integer({ min: 0, max: 20 }), ({ n, edges }, halo) => {
        const inner = Math.max(1, n - halo);
        const words = (n + 31) >>> 5;
        const bits = new Uint32Array(inner * words);
        const set = Array.from({ length: n }, () => new Set<number>());
        for (const [u, v] of edges) {
          if (u === v) continue;
          set[u].add(v);
          set[v].add(u);
          if (u < inner) bits[u * words + (v >>> 5)] |= 1 << (v & 31);
          if (v < inner) bits[v * words + (u >>> 5)] |= 1 << (u & 31);
        }
        const sequence = new Uint32Array(inner);
        minimumDegree(inner, words, bits, sequence);
        const left = new Set(Array.from({ length: inner }, (_, v) => v));
        for (const pivot of sequence) {
          expect(left.has(pivot)).toBe(true);
          for (const v of left) expect(set[pivot].size).toBeLessThanOrEqual(set[v].size);
          left.delete(pivot);
          for (const u of set[pivot]) {
            set[u].delete(pivot);
            for (const v of set[pivot]) if (u !== v) set[u].add(v);
          }
        }
      }),
      { numRuns: 100, seed: 8 },
    );
  });
});
