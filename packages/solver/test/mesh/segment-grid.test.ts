import { describe, expect, it } from 'vitest';
import { segmentGrid } from '../../src/mesh/segment-grid.ts';
import type { Web } from '../../src/mesh/web.ts';
import { uniform } from '../linear-algebra/systems.ts';

/** Short segments all over a plate of 100 by 60 and beyond its sides, every fifth along an axis. */
function scattered(count: number, seed: number): Web {
  const next = uniform(seed);
  const [x, y]: [number[], number[]] = [[], []];
  for (let s = 0; s < count; s++) {
    const [px, py] = [120 * next() - 60, 80 * next() - 40];
    x.push(px, px + (s % 5 === 0 ? 0 : 8 * next() - 4));
    y.push(py, py + (s % 5 === 1 ? 0 : 8 * next() - 4));
  }
  return {
    x,
    y,
    fixed: x.map(() => false),
    tolerance: x.map(() => 0),
    from: Array.from({ length: count }, (_, s) => 2 * s),
    to: Array.from({ length: count }, (_, s) => 2 * s + 1),
    bounds: [],
    outline: [],
    points: [],
    least: 1e-5,
    min: [-50, -30],
    max: [50, 30],
  };
}

function distance({ x, y, from, to }: Web, s: number, px: number, py: number): number {
  const [ax, ay, dx, dy] = [x[from[s]], y[from[s]], x[to[s]] - x[from[s]], y[to[s]] - y[from[s]]];
  const t = Math.max(0, Math.min(1, ((px - ax) * dx + (py - ay) * dy) / (dx * dx + dy * dy)));
  return Math.hypot(px - ax - t * dx, py - ay - t * dy);
}

describe('grid of segments', () => {
  const web = scattered(600, 41);
  const next = uniform(42);
  const points = Array.from({ length: 2000 }, () => [130 * next() - 65, 90 * next() - 45] as const);

  for (const margin of [0, 0.3])
    it(`knows every segment within ${margin} of a point, and few others`, () => {
      const grid = segmentGrid(web, margin);
      let named = 0;
      for (const [px, py] of points) {
        const near = grid.near(px, py);
        for (let s = 0; s < 600; s++) if (distance(web, s, px, py) <= margin) expect(near).toContain(s);
        if (Math.abs(px) < 45 && Math.abs(py) < 25) named = Math.max(named, near.length);
      }
      expect(named).toBeLessThan(40);
      // A point on the segment itself.
      for (let s = 0; s < 600; s++)
        for (const t of [0, 0.37, 1]) {
          const [a, b] = [web.from[s], web.to[s]];
          expect(grid.near(web.x[a] + t * (web.x[b] - web.x[a]), web.y[a] + t * (web.y[b] - web.y[a]))).toContain(s);
        }
    });

  it('has a cell in common of any two that cross', () => {
    const { x, y, from, to } = web;
    const turn = (a: number, b: number, c: number) =>
      Math.sign((x[b] - x[a]) * (y[c] - y[a]) - (x[c] - x[a]) * (y[b] - y[a]));
    const grid = segmentGrid(web, 0);
    let crossings = 0;
    for (let s = 0; s < 600; s++) {
      const [a, b] = [from[s], to[s]];
      const met = new Set(grid.cellsOf(s).flat());
      for (let r = 0; r < s; r++) {
        const [c, d] = [from[r], to[r]];
        if (turn(a, b, c) === turn(a, b, d) || turn(c, d, a) === turn(c, d, b)) continue;
        crossings++;
        expect(met.has(r)).toBe(true);
      }
    }
    expect(crossings).toBeGreaterThan(50);
  });
});
