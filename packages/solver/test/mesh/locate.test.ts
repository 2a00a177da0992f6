import { describe, expect, it } from 'vitest';
import { insideRegion } from '../../src/geometry/inside.ts';
import { triangleNeighbours, vertexGraph } from '../../src/mesh/adjacency.ts';
import { barycentric, locate, locator, trianglesIn } from '../../src/mesh/locate.ts';
import { meshDomain } from '../../src/mesh/mesh-domain.ts';
import { randomHead } from './random-head.ts';

const { domain, size } = randomHead(17);
const mesh = meshDomain(domain, size);
const grid = locator(mesh);
const { x, y, triangles } = mesh;
const [width, height] = [Math.max(...x), Math.max(...y)];

const cornersOf = (t: number) => Array.from(triangles.subarray(3 * t, 3 * t + 3));

describe('locating points', () => {
  it('finds every centroid, node and edge midpoint', () => {
    for (let t = 0; t < mesh.region.length; t++) {
      const [a, b, c] = triangles.subarray(3 * t, 3 * t + 3);
      expect(locate(grid, (x[a] + x[b] + x[c]) / 3, (y[a] + y[b] + y[c]) / 3)).toBe(t);
      const onEdge = locate(grid, (x[a] + x[b]) / 2, (y[a] + y[b]) / 2);
      expect(cornersOf(onEdge)).toEqual(expect.arrayContaining([a, b]));
      const atNode = locate(grid, x[a], y[a]);
      expect(cornersOf(atNode)).toContain(a);
    }
  });

  it('agrees with the outline on points everywhere, off the plate too', () => {
    for (let i = 0; i < 4000; i++) {
      const [px, py] = [Math.sin(i * 1.7) * 1.2 * width, Math.sin(i * 2.3 + 1) * 1.2 * height];
      expect(locate(grid, px, py) >= 0, `[${px}, ${py}]`).toBe(insideRegion(domain.outline, px, py));
    }
  });

  it('counts points off the boundary by less than 1e-9 of the extent, and no more', () => {
    const { boundary } = mesh;
    const extent = 2 * Math.max(width, height);
    for (let i = 0; i < boundary.length; i += 2) {
      const [a, b] = [boundary[i], boundary[i + 1]];
      const length = Math.hypot(x[b] - x[a], y[b] - y[a]);
      const [nx, ny] = [(y[b] - y[a]) / length, (x[a] - x[b]) / length];
      const off = (d: number) => locate(grid, (x[a] + x[b]) / 2 + d * nx, (y[a] + y[b]) / 2 + d * ny);
      expect(off(0.5e-9 * extent)).toBeGreaterThanOrEqual(0);
      expect(off(4e-9 * extent)).toBe(-1);
    }
  });

  it('knows no triangle at a point that is no point', () => {
    expect(locate(grid, Number.NaN, 0)).toBe(-1);
    expect(locate(grid, 1e300, 0)).toBe(-1);
  });

  it('lists the triangles of a box once each, as a plain search does', () => {
    for (let i = 0; i < 60; i++) {
      const [cx, cy] = [Math.sin(i * 1.7) * width, Math.sin(i * 2.3) * height];
      const [dx, dy] = [(i % 7) * 0.1 * width, (i % 5) * 0.1 * height];
      const expected: number[] = [];
      for (let t = 0; t < mesh.region.length; t++) {
        const nodes = triangles.subarray(3 * t, 3 * t + 3);
        const [px, py] = [Array.from(nodes, (v) => x[v]), Array.from(nodes, (v) => y[v])];
        const apart =
          Math.min(...px) > cx + dx ||
          Math.max(...px) < cx - dx ||
          Math.min(...py) > cy + dy ||
          Math.max(...py) < cy - dy;
        if (!apart) expected.push(t);
      }
      expect(Array.from(trianglesIn(grid, cx - dx, cy - dy, cx + dx, cy + dy))).toEqual(expected);
    }
  });

  it('gives barycentric coordinates that bring the point back', () => {
    for (let t = 0; t < mesh.region.length; t += 7) {
      const [a, b, c] = triangles.subarray(3 * t, 3 * t + 3);
      const [px, py] = [0.2 * x[a] + 0.5 * x[b] + 0.3 * x[c], 0.2 * y[a] + 0.5 * y[b] + 0.3 * y[c]];
      const [first, second, third] = barycentric(mesh, t, px, py);
      expect(first).toBeCloseTo(0.2, 10);
      expect(second).toBeCloseTo(0.5, 10);
      expect(third).toBeCloseTo(0.3, 10);
    }
  });
});

describe('neighbours', () => {
  it('joins nodes by edges, both ways, ascending', () => {
    const { start, neighbour } = vertexGraph(mesh);
    const edges = new Set<string>();
    for (let i = 0; i < triangles.length; i++) {
      const [a, b] = [triangles[i], triangles[i % 3 === 2 ? i - 2 : i + 1]];
      edges.add(`${a}-${b}`).add(`${b}-${a}`);
    }
    expect(neighbour.length).toBe(edges.size);
    for (let v = 0; v < x.length; v++)
      for (let i = start[v]; i < start[v + 1]; i++) {
        expect(edges.has(`${v}-${neighbour[i]}`)).toBe(true);
        if (i > start[v]) expect(neighbour[i]).toBeGreaterThan(neighbour[i - 1]);
      }
  });

  it('knows the triangle across each edge', () => {
    const across = triangleNeighbours(mesh);
    expect(across.filter((t) => t < 0).length).toBe(mesh.boundary.length / 2);
    across.forEach((other, e) => {
      if (other < 0) return;
      const shared = [triangles[e], triangles[e % 3 === 2 ? e - 2 : e + 1]];
      expect(cornersOf(other)).toEqual(expect.arrayContaining(shared));
      expect(across.subarray(3 * other, 3 * other + 3)).toContain(Math.floor(e / 3));
    });
  });
});
