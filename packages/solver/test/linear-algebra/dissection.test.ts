import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cuttingLines, intervalsFor } from '../../src/linear-algebra/cutting-line.ts';
import { drawGraph } from '../../src/linear-algebra/drawing.ts';
import { graphOf } from '../../src/linear-algebra/graph.ts';
import { leafWork, orderLeaf } from '../../src/linear-algebra/leaf-order.ts';
import { split, splitWork } from '../../src/linear-algebra/separator.ts';
import { AFTER, BEFORE, BETWEEN } from '../../src/linear-algebra/vertex-cut.ts';
import { chain, type Drawing, grid, randomDrawing, randomSystem } from './systems.ts';

/** The drawing with so many of its vertices in one part, the others in another. */
function drawn(drawing: Drawing, mine = (_: number) => true) {
  const graph = graphOf(randomSystem(drawing.n, drawing.edges, 1));
  const made = drawGraph(graph, drawing.x, drawing.y);
  const vertices = Uint32Array.from({ length: drawing.n }, (_, v) => v).filter(mine);
  for (let v = 0; v < drawing.n; v++) made.part[v] = mine(v) ? 5 : 6;
  return { made, vertices };
}

/** Sizes of both sides and of the separator; fails if an edge of the part joins the sides. */
function splitOf(drawing: Drawing, mine?: (v: number) => boolean) {
  const { made, vertices } = drawn(drawing, mine);
  const work = splitWork(drawing.n, made.neighbour.length);
  split(made, vertices, work);
  const inPart = new Set(vertices);
  const sizes: Record<number, number> = { [BEFORE]: 0, [BETWEEN]: 0, [AFTER]: 0 };
  for (const v of vertices) {
    sizes[work.side[v]]++;
    if (work.side[v] !== BEFORE) continue;
    for (let e = made.start[v]; e < made.start[v + 1]; e++)
      if (inPart.has(made.neighbour[e])) expect(work.side[made.neighbour[e]]).not.toBe(AFTER);
  }
  return { before: sizes[BEFORE], between: sizes[BETWEEN], after: sizes[AFTER] };
}

describe('a part of a graph split in two', () => {
  it('has no edge between its sides, whatever the drawing, and counts its own vertices alone', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 49, max: 300 }),
        fc.integer({ min: 0, max: 900 }),
        fc.integer({ min: 0, max: 1e6 }),
        fc.integer({ min: 2, max: 9 }),
        (n, edges, seed, out) => {
          const { before, between, after } = splitOf(randomDrawing(n, edges, seed), (v) => v % out !== 0);
          expect(before + between + after).toBe(n - Math.ceil(n / out));
        },
      ),
      { numRuns: 60, seed: 13 },
    );
  });

  for (const [columns, rows] of [
    [60, 4],
    [6, 50],
    [30, 30],
  ])
    it(`has a separator as short as a row across a grid of ${columns} by ${rows}, and even sides`, () => {
      const { before, between, after } = splitOf(grid(columns, rows));
      // A row; diagonals of the drawing may make a straight one longer, a smallest cut never by much.
      expect(between).toBeLessThanOrEqual(Math.ceil(1.1 * Math.min(columns, rows)));
      expect(Math.min(before, after)).toBeGreaterThan(0.3 * columns * rows);
    });

  it('is cut at the neck that its drawing shows', () => {
    // Two grids of 15 by 15 whose middles are joined by a chain of 5.
    const [left, right, neck] = [grid(15, 15, 1), grid(15, 15, 2), chain(5)];
    const [n, m] = [225, 450];
    const x = Float64Array.from([...left.x, ...right.x.map((v) => v + 20), ...neck.x.map((v) => v + 15)]);
    const y = Float64Array.from([...left.y, ...right.y, ...neck.y.map(() => 7)]);
    const edges = [
      ...left.edges,
      ...right.edges.map(([a, b]) => [a + n, b + n] as const),
      ...neck.edges.map(([a, b]) => [a + m, b + m] as const),
      [7 * 15 + 14, m] as const,
      [n + 7 * 15, m + 4] as const,
    ];
    const { before, between, after } = splitOf({ n: 455, edges, x, y });
    expect(between).toBe(1);
    expect(Math.min(before, after)).toBeGreaterThan(220);
  });
});

describe('lines across a part', () => {
  it('count the edges they cut, and are the best of their direction that leaves a third on either side', () => {
    fc.assert(
      fc.property(fc.integer({ min: 49, max: 200 }), fc.integer({ min: 0, max: 1e6 }), (n, seed) => {
        const drawing = randomDrawing(n, 3 * n, seed);
        const { made, vertices } = drawn(drawing, (v) => v % 7 !== 0);
        const work = intervalsFor(n);
        const lines = cuttingLines(made, vertices, work);
        const own = new Map(drawing.edges.map(([a, b]) => [`${Math.min(a, b)} ${Math.max(a, b)}`, [a, b] as const]));
        const edges = [...own.values()].filter(([a, b]) => a !== b && a % 7 !== 0 && b % 7 !== 0);
        const along = [drawing.x, drawing.y, drawing.x.map((v, i) => v + drawing.y[i]), drawing.x.map((v, i) => v - drawing.y[i])]; // biome-ignore format: directions
        for (const { direction, low, high, reach, cost } of lines) {
          const at = (v: number) => work.bin[4 * v + direction];
          // Intervals follow the coordinate, and an edge spans as many as it may.
          const sorted = [...vertices].sort((a, b) => along[direction][a] - along[direction][b]);
          expect(sorted.every((v, i) => i === 0 || at(v) >= at(sorted[i - 1]))).toBe(true);
          expect(edges.every(([a, b]) => Math.abs(at(a) - at(b)) <= reach)).toBe(true);
          let best = Infinity;
          const last = Math.max(...vertices.map(at));
          for (let b = 0; b < last; b++) {
            const share = vertices.filter((v) => at(v) <= b).length / vertices.length;
            if (share < 0.35 || share > 0.65) continue;
            const cut = edges.filter(([p, q]) => at(p) <= b !== at(q) <= b).length;
            best = Math.min(best, (cut + 0.5) * (1 + 1.5 * (2 * share - 1) ** 2));
          }
          expect(cost).toBeCloseTo(best, 9);
          expect(vertices.some((v) => at(v) < low)).toBe(true);
          expect(vertices.some((v) => at(v) > high)).toBe(true);
        }
        for (let k = 1; k < lines.length; k++) expect(lines[k].cost).toBeGreaterThanOrEqual(lines[k - 1].cost);
      }),
      { numRuns: 12, seed: 14 },
    );
  });
});

describe('a leaf', () => {
  it('is ordered by the least degree, all its other neighbours counted, one leaf after another', () => {
    fc.assert(
      fc.property(fc.integer({ min: 10, max: 90 }), fc.integer({ min: 0, max: 1e6 }), (n, seed) => {
        const { edges } = randomDrawing(n, 2 * n, seed);
        const graph = graphOf(randomSystem(n, edges, 1));
        const work = leafWork(n, 48);
        for (const kept of [0, 1]) {
          const given = Uint32Array.from({ length: n }, (_, v) => v).filter((v) => v % 3 === kept);
          const leaf = given.slice(0, 48);
          const sequence = leaf.slice();
          orderLeaf(graph, sequence, work);
          expect([...sequence].sort((a, b) => a - b)).toEqual([...leaf]);
          const set = Array.from({ length: n }, () => new Set<number>());
          for (const [u, v] of edges)
            if (u !== v) {
              set[u].add(v);
              set[v].add(u);
            }
          const left = new Set(leaf);
          for (const pivot of sequence) {
            expect(Math.min(...[...left].map((v) => set[v].size))).toBe(set[pivot].size);
            left.delete(pivot);
            for (const u of set[pivot]) {
              set[u].delete(pivot);
              for (const v of set[pivot]) if (u !== v) set[u].add(v);
            }
          }
        }
      }),
      { numRuns: 30, seed: 15 },
    );
  });
});
