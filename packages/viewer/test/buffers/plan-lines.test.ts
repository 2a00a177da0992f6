import { locator } from '@flathead/solver';
import { describe, expect, it } from 'vitest';
import { hatchStrokes } from '../../src/buffers/hatch.ts';
import { rimEdges } from '../../src/buffers/layer-solid.ts';
import { edgeLines, edgesWithin, hangLines, ringLines, siteRings } from '../../src/buffers/plan-lines.ts';
import { prismSolid } from '../../src/buffers/prism-solid.ts';
import { gridMesh, nodal } from './grid-mesh.ts';

const mesh = gridMesh(10, 10, 40, 40);
const tilted = nodal(mesh, (x, y) => 0.01 * x + 0.02 * y);

/** Deviation of each vertex, as uploaded. */
const hung = (lines: ReturnType<typeof ringLines>): number[] =>
  [...hangLines(lines, tilted, new Float32Array(lines.position.length))].filter((_, i) => i % 3 === 0);

describe('lines on the plate', () => {
  it('follow the field between nodes, in pieces of 1.5 mm at most', () => {
    const lines = ringLines(
      siteRings([{ name: 'A1', row: 0, column: 0, centre: [3, -2], field: [6, 7] }]),
      locator(mesh),
      2,
    );
    hung(lines).forEach((deviation, i) => {
      const [x, y, z] = lines.position.subarray(3 * i, 3 * i + 3);
      expect(deviation).toBeCloseTo(0.01 * x + 0.02 * y, 5);
      expect(z).toBe(2);
    });
    for (let i = 0; i < lines.position.length; i += 6) {
      const [xa, ya, , xb, yb] = lines.position.subarray(i, i + 6);
      expect(Math.hypot(xb - xa, yb - ya)).toBeLessThanOrEqual(1.5 + 1e-6);
    }
  });

  it('stay flat off the plate', () => {
    expect(
      hung(
        ringLines(
          [
            [
              [100, 0],
              [101, 0],
              [100, 1],
            ],
          ],
          locator(mesh),
          0,
        ),
      ).every((value) => value === 0),
    ).toBe(true);
  });

  it('hang edges of the mesh on their nodes', () => {
    const lines = edgeLines(mesh, Uint32Array.from([0, 5]), -1);
    expect(hung(lines)).toEqual([0, 5].map((v) => Math.fround(tilted[v])));
  });

  it('keep the edges within a part', () => {
    const left = Uint32Array.from({ length: mesh.triangles.length / 3 }, (_, t) => t).filter(
      (t) => Math.floor(t / 2) % 10 < 5,
    );
    const all = Uint32Array.from({ length: mesh.triangles.length / 3 }, (_, t) => t);
    const rim = rimEdges(mesh, all);
    const within = edgesWithin(rim, mesh, left);
    expect(rim.length / 2).toBe(40);
    expect(within.length / 2).toBe(10 + 5 + 5);
  });
});

describe('hatchStrokes', () => {
  it('stays inside the ring and covers it evenly', () => {
    const ring = [
      [0, 0],
      [30, 0],
      [30, 10],
      [0, 10],
    ] as const;
    const strokes = hatchStrokes(ring, 1);
    let length = 0;
    for (let i = 0; i < strokes.length; i += 2) {
      const [[xa, ya], [xb, yb]] = [strokes[i], strokes[i + 1]];
      for (const [x, y] of [strokes[i], strokes[i + 1]]) {
        expect(x).toBeGreaterThan(-1e-9);
        expect(x).toBeLessThan(30 + 1e-9);
        expect(y).toBeGreaterThan(-1e-9);
        expect(y).toBeLessThan(10 + 1e-9);
      }
      length += Math.hypot(xb - xa, yb - ya);
    }
    // Strokes a distance apart have a total length of area over distance.
    expect(Math.abs(length / 300 - 1)).toBeLessThan(0.03);
  });

  it('has nothing to do without a ring', () => {
    expect(hatchStrokes([], 1)).toEqual([]);
  });
});

describe('prismSolid', () => {
  it('points outward all round and up on its lid', () => {
    const { position, normal, index } = prismSolid(2, 3, 6, 1);
    for (let f = 0; f < index.length; f += 3) {
      const [a, b, c] = [0, 1, 2].map((k) => position.subarray(3 * index[f + k], 3 * index[f + k] + 3));
      const [u, v] = [b, c].map((p) => [p[0] - a[0], p[1] - a[1], p[2] - a[2]]);
      const facing = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
      const n = normal.subarray(3 * index[f], 3 * index[f] + 3);
      expect(facing[0] * n[0] + facing[1] * n[1] + facing[2] * n[2]).toBeGreaterThan(0);
    }
    expect(Math.max(...position.filter((_, i) => i % 3 === 2))).toBe(4);
  });
});
