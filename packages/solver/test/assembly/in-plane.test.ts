import { describe, expect, it } from 'vitest';
import { coupledOrder } from '../../src/assembly/in-plane.ts';
import { mesh, plane } from './coupled-samples.ts';

const n = mesh.x.length;
const { rows, ends, pattern } = plane;

describe('in-plane rows', () => {
  it('are two for each node and one for each side, which one or two triangles have', () => {
    // Euler: nodes - sides + triangles = 1.
    const sides = n + mesh.region.length - 1;
    expect(ends.length).toBe(2 * sides);
    expect(pattern.n).toBe(2 * n + sides);
    const uses = new Uint8Array(pattern.n);
    for (const row of rows) uses[row]++;
    const ofSides = [...uses.subarray(2 * n)];
    expect(ofSides.filter((count) => count === 1).length).toBe(mesh.boundary.length / 2);
    expect(ofSides.filter((count) => count === 2).length).toBe(sides - mesh.boundary.length / 2);
  });

  it('couple all rows of every triangle and no others, columns ascending, the diagonal last', () => {
    const { start, column, block } = pattern;
    const expected = Array.from({ length: pattern.n }, () => new Set<number>());
    for (let t = 0; t < mesh.region.length; t++) {
      const own = rows.subarray(9 * t, 9 * t + 9);
      for (let p = 0, k = 45 * t; p < 9; p++)
        for (let q = 0; q <= p; q++, k++) {
          const [i, j] = [Math.max(own[p], own[q]), Math.min(own[p], own[q])];
          expected[i].add(j);
          expect(column[block[k]]).toBe(j);
          expect(block[k]).toBeGreaterThanOrEqual(start[i]);
          expect(block[k]).toBeLessThan(start[i + 1]);
        }
    }
    for (let i = 0; i < pattern.n; i++)
      expect([...column.subarray(start[i], start[i + 1])]).toEqual([...expected[i]].sort((a, b) => a - b));
  });
});

describe('elimination order of all rows', () => {
  it('keeps that of the nodes, each with its sides and its in-plane row right before it', () => {
    const nodes = Uint32Array.from({ length: n }, (_, k) => (7 * k + 3) % n);
    const place = (list: Uint32Array) => {
      const at = new Int32Array(pattern.n).fill(-1);
      list.forEach((row, k) => {
        at[row] = k;
      });
      return at;
    };
    const [ofNode, ofRow] = [place(nodes), place(coupledOrder(nodes, plane))];
    expect(Math.min(...ofRow)).toBe(0);
    for (let node = 0; node < n; node++) expect(ofRow[n + node]).toBe(ofRow[node] - 1);
    for (let k = 1; k < n; k++) expect(ofRow[nodes[k]]).toBeGreaterThan(ofRow[nodes[k - 1]]);
    for (let e = 0; e < ends.length / 2; e++) {
      const first = Math.min(ofNode[ends[2 * e]], ofNode[ends[2 * e + 1]]);
      expect(ofRow[2 * n + e]).toBeLessThan(ofRow[n + nodes[first]]);
      if (first > 0) expect(ofRow[2 * n + e]).toBeGreaterThan(ofRow[nodes[first - 1]]);
    }
  });
});
