import { describe, expect, it } from 'vitest';
import { areaPoints } from '../../src/results/area-points.ts';
import { minimumZone } from '../../src/results/minimum-zone.ts';
import { sampleAreas } from '../../src/results/sample-areas.ts';
import { rectangleMesh } from '../assembly/sample-meshes.ts';

/** w = c (x^2 + 3 y^2) + 0.01 x: of second degree, hence exact inside of the elements. */
const c = 2e-5;
const w = (x: number, y: number) => c * (x * x + 3 * y * y) + 0.01 * x;

describe('points of an area', () => {
  const mesh = rectangleMesh(4, 8);
  const u = Float64Array.from({ length: 3 * mesh.x.length }, (_, p) => {
    const [x, y] = [mesh.x[Math.floor(p / 3)], mesh.y[Math.floor(p / 3)]];
    return [w(x, y), 6 * c * y, -2 * c * x - 0.01][p % 3];
  });
  const areas = sampleAreas(mesh, 0, ['all']);
  const points = areaPoints(mesh, u, areas);

  it('are nodes and mid-sides, each once, at the deflection of the element', () => {
    // Euler: edges = nodes + triangles - 1 of a mesh without holes.
    expect(points.length / 3).toBe(2 * mesh.x.length + mesh.region.length - 1);
    for (let i = 0; i < points.length; i += 3) expect(points[i + 2]).toBeCloseTo(w(points[i], points[i + 1]), 15);
    const places = new Set(
      Array.from({ length: points.length / 3 }, (_, i) => `${points[3 * i]} ${points[3 * i + 1]}`),
    );
    expect(places.size).toBe(points.length / 3);
  });

  it('hold what nodes alone miss of a dome between them', () => {
    // One square of two triangles: a node at each corner, and the crest in the middle of their common side.
    const two = rectangleMesh(1, 1);
    const dome = (x: number, y: number) => 1e-3 * ((x - 4) ** 2 + (y - 4) ** 2);
    const [xs, ys] = [Math.max(...two.x), Math.max(...two.y)];
    const scaled = Float64Array.from({ length: 3 * two.x.length }, (_, p) => {
      const [x, y] = [two.x[Math.floor(p / 3)], two.y[Math.floor(p / 3)]];
      return [dome(x, y), 2e-3 * (y - 4), -2e-3 * (x - 4)][p % 3];
    });
    const sampled = areaPoints(two, scaled, sampleAreas(two, 0, ['all']));
    const corners = sampled.slice(0, 12);
    const truth = 1e-3 * ((xs / 2) ** 2 + (ys / 2) ** 2);
    expect(minimumZone(sampled)).toBeGreaterThan(0.9 * truth);
    expect(minimumZone(corners)).toBeLessThan(0.5 * truth);
  });
});
