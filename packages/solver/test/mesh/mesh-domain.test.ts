import { describe, expect, it } from 'vitest';
import { Fault } from '../../src/fault/fault.ts';
import { difference } from '../../src/geometry/boolean.ts';
import type { Point, Ring } from '../../src/geometry/point.ts';
import { area } from '../../src/geometry/region.ts';
import { shapeRing } from '../../src/geometry/ring.ts';
import { arrange } from '../../src/mesh/arrangement.ts';
import type { MeshDomain } from '../../src/mesh/domain.ts';
import { meshDomain } from '../../src/mesh/mesh-domain.ts';
import { type SizeField, sizeField } from '../../src/mesh/size-field.ts';
import { components, meshFaults } from '../../src/mesh/validity.ts';
import { lostSegments, regionAreas, sum, thinTriangles } from './promises.ts';
import { randomHead } from './random-head.ts';

const box = (x: number, y: number, width: number, height: number) =>
  shapeRing({ rectangle: [width, height], centre: [x, y] }, { chord: 1 });
const disc = (x: number, y: number, diameter: number, chord = 0.01) =>
  shapeRing({ circle: diameter, centre: [x, y] }, { chord });
const polygon = (...corners: [number, number][]) => shapeRing({ polygon: corners }, { chord: 1 });

/** Meshes and checks all that every mesh must keep. */
function soundMesh(domain: MeshDomain, size: SizeField) {
  const mesh = meshDomain(domain, size);
  const arrangement = arrange(domain, (x, y) => 0.01 * size(x, y));
  const areas = regionAreas(mesh, domain.regions.length);
  expect(meshFaults(mesh)).toEqual([]);
  expect(lostSegments(mesh, domain, arrangement)).toEqual([]);
  expect(thinTriangles(mesh, arrangement, 20, 20)).toEqual([]);
  expect(thinTriangles(mesh, arrangement, 25, 30)).toEqual([]);
  expect(Math.abs(sum(areas) / area(domain.outline) - 1)).toBeLessThan(1e-9);
  return { mesh, areas };
}

function refusal(act: () => unknown): Fault {
  try {
    act();
  } catch (thrown) {
    if (thrown instanceof Fault) return thrown;
    throw thrown;
  }
  throw new Error('nothing was refused');
}

describe('mesh of a domain', () => {
  it('follows holes and overlapping regions, later ones on top, with angles of 25 degrees and more', () => {
    const outline = difference([box(0, 0, 80, 50)], [disc(-20, 14, 8)]);
    const regions = [box(0, 0, 60, 40), box(10, 0, 3, 60), box(25, 5, 100, 6)];
    const { mesh, areas } = soundMesh({ outline, regions }, () => 2);
    expect(components(mesh).count).toBe(1);
    expect(mesh.minAngle).toBeGreaterThanOrEqual(25);
    const hole = area([disc(0, 0, 8)]);
    expect(areas[3]).toBeCloseTo(65 * 6, 8);
    expect(areas[2]).toBeCloseTo(3 * (50 - 6), 8);
    expect(areas[1]).toBeCloseTo(60 * 40 - 55 * 6 - 3 * 34 - hole, 8);
  });

  it('has edges of the wanted length and as many nodes as equilateral triangles of that size', () => {
    for (const size of [4, 1.5, 0.7]) {
      const { mesh } = soundMesh({ outline: [box(0, 0, 100, 60)], regions: [] }, () => size);
      const expected = (2 * 6000) / (Math.sqrt(3) * size ** 2);
      expect(mesh.region.length / (2 * expected)).toBeGreaterThan(0.95);
      expect(mesh.region.length / (2 * expected)).toBeLessThan(1.15);
      const longest = mesh.triangles.reduce((most, a, i) => {
        const b = mesh.triangles[i % 3 === 2 ? i - 2 : i + 1];
        return Math.max(most, Math.hypot(mesh.x[b] - mesh.x[a], mesh.y[b] - mesh.y[a]));
      }, 0);
      expect(longest).toBeLessThan(2 * size);
    }
  });

  it('is finer where the size field asks for it', () => {
    const size = sizeField({ base: 4, sources: [{ at: [10, 5], size: 0.2 }], growth: 0.25 });
    const { mesh } = soundMesh({ outline: [box(0, 0, 100, 60)], regions: [] }, size);
    const lengths = (near: boolean) => {
      const found: number[] = [];
      for (let i = 0; i < mesh.triangles.length; i += 3) {
        const [a, b] = [mesh.triangles[i], mesh.triangles[i + 1]];
        const far = Math.hypot(mesh.x[a] - 10, mesh.y[a] - 5);
        if (near ? far < 0.5 : far > 20) found.push(Math.hypot(mesh.x[b] - mesh.x[a], mesh.y[b] - mesh.y[a]));
      }
      return sum(found) / found.length;
    };
    expect(lengths(true)).toBeLessThan(0.4);
    expect(lengths(false)).toBeGreaterThan(3);
  });

  it('puts nodes at the points asked for and leaves those off the plate', () => {
    const points: Point[] = [[3.3, 4.4], [-7, 0], [40, 25], [500, 0]]; // biome-ignore format: points
    const { mesh } = soundMesh({ outline: [box(0, 0, 80, 50)], regions: [box(0, 0, 14, 20)], points }, () => 3);
    const isNode = ([px, py]: Point) => mesh.x.some((x, v) => x === px && mesh.y[v] === py);
    expect(points.map(isNode)).toEqual([true, true, true, false]);
  });

  it('lists the boundary with the plate on the left', () => {
    const outline = difference([box(0, 0, 80, 50)], [disc(0, 0, 20)]);
    const { mesh } = soundMesh({ outline, regions: [] }, () => 3);
    let twice = 0;
    for (let i = 0; i < mesh.boundary.length; i += 2) {
      const [a, b] = [mesh.boundary[i], mesh.boundary[i + 1]];
      twice += mesh.x[a] * mesh.y[b] - mesh.x[b] * mesh.y[a];
    }
    expect(twice / 2).toBeCloseTo(area(outline), 8);
  });
});

describe('awkward domains', () => {
  const plate = box(0, 0, 80, 50);

  it('a slot 1e-4 mm wide and 60 mm long', () => {
    const outline = difference([plate], [box(0, 0, 60, 1e-4)]);
    const { mesh } = soundMesh({ outline, regions: [] }, () => 2);
    expect(components(mesh).count).toBe(1);
    expect(mesh.x.length).toBeLessThan(5000);
  });

  it('a hole 0.01 mm from the edge', () => {
    const outline = difference([plate], [disc(0, 20, 9.98, 1e-3)]);
    const { mesh } = soundMesh({ outline, regions: [] }, () => 2);
    expect(mesh.x.length).toBeLessThan(5000);
  });

  it('a corner of 5 degrees', () => {
    const { mesh } = soundMesh({ outline: [polygon([0, 0], [80, 0], [80, 7])], regions: [] }, () => 1);
    expect(mesh.minAngle).toBeGreaterThan(2);
    expect(mesh.x.length).toBeLessThan(2000);
  });

  it('corners of every sharpness from 60 degrees down to a tenth of one', () => {
    for (let angle = 60; angle > 0.1; angle *= 0.8) {
      const rise = 50 * Math.tan((angle * Math.PI) / 180);
      const { mesh } = soundMesh({ outline: [polygon([0, 0], [50, 0], [50, rise])], regions: [] }, () => 2);
      expect(mesh.minAngle, `a corner of ${angle} degrees`).toBeGreaterThan(Math.min(25, angle) / 3);
      expect(mesh.x.length).toBeLessThan(3000);
    }
  });

  it('a long wedge of 0.1 degrees between two regions, for a handful of nodes more than without', () => {
    const rib = (open: number) => polygon([-30, -2], [30, -2 - open], [30, 2], [-30, 2]);
    const nodes = [0, 0.1].map((open) => {
      const regions = [box(0, -2, 60, 8), rib(0), polygon([-30, -2], [30, -2 - open], [30, -6], [-30, -6])];
      return soundMesh({ outline: [plate], regions }, () => 2).mesh.x.length;
    });
    expect(nodes[1] / nodes[0]).toBeLessThan(1.2);
  });

  it('a star of eight ribs through one point, their edges crossing at sharp angles', () => {
    const ribs = Array.from({ length: 8 }, (_, i): Ring => {
      const [c, s] = [Math.cos((Math.PI * i) / 8 + 0.1), Math.sin((Math.PI * i) / 8 + 0.1)];
      const corner = (u: number, v: number): [number, number] => [u * c - v * s, u * s + v * c];
      return polygon(corner(-30, -0.5), corner(30, -0.5), corner(30, 0.5), corner(-30, 0.5));
    });
    const { mesh } = soundMesh({ outline: [plate], regions: ribs }, () => 2);
    expect(mesh.x.length).toBeLessThan(12000);
  });

  it('collinear corners that add nothing', () => {
    const corners: [number, number][] = [];
    for (let i = 0; i < 200; i++) corners.push([i * 0.4, 0]);
    corners.push([80, 0], [80, 30], [40.000001, 30], [40, 30], [0, 30]);
    const { mesh } = soundMesh({ outline: [polygon(...corners)], regions: [] }, () => 5);
    expect(mesh.minAngle).toBeGreaterThanOrEqual(25);
    expect(mesh.x.length).toBeLessThan(3000);
  });

  it('a circle of far more edges than the elements need', () => {
    const { mesh } = soundMesh({ outline: difference([plate], [disc(0, 0, 20, 1e-5)]), regions: [] }, () => 2);
    expect(mesh.minAngle).toBeGreaterThanOrEqual(25);
  });

  it('edges of a rib and the window that coincide', () => {
    const regions = [box(0, 0, 70, 40), box(0, 0, 50, 30), box(0, 0, 4, 30), box(-14.5, 0, 25, 30)];
    const { mesh, areas } = soundMesh({ outline: [plate], regions }, () => 2);
    expect(mesh.minAngle).toBeGreaterThanOrEqual(25);
    expect(areas[3]).toBeCloseTo(4 * 30, 8);
    expect(areas[4]).toBeCloseTo(25 * 30, 8);
    expect(areas[2]).toBeCloseTo(23 * 30, 8);
  });

  it('a gap of 1e-4 mm between a rib and the window closes instead of filling with slivers', () => {
    const gaps = [0, 1e-7, 1e-4].map((gap) => {
      const regions = [box(0, 0, 70, 40), box(0, 0, 50, 30), box(0, 0, 4, 30 - 2 * gap)];
      const { mesh } = soundMesh({ outline: [plate], regions }, () => 2);
      expect(mesh.minAngle).toBeGreaterThanOrEqual(25);
      return mesh.x.length;
    });
    expect(Math.max(...gaps) / Math.min(...gaps)).toBeLessThan(1.05);
  });

  it('a gap that counts is kept, at the cost of small elements beside it only', () => {
    const regions = [box(0, 0, 70, 40), box(0, 0, 50, 30), box(0, 0, 4, 29.8)];
    const { areas, mesh } = soundMesh({ outline: [plate], regions }, () => 2);
    expect(areas[3]).toBeCloseTo(4 * 29.8, 8);
    expect(mesh.x.length).toBeLessThan(4000);
  });

  it('a region that covers the plate, one far outside, one that only touches and one of no width to speak of', () => {
    const regions = [box(0, 0, 1e5, 1e5), box(900, 0, 5, 5), box(42.5, 0, 5, 5), box(0, 0, 1e-3, 20)];
    const { areas, mesh } = soundMesh({ outline: [plate], regions }, () => 8);
    expect(areas[0]).toBe(0);
    expect(areas[2]).toBe(0);
    expect(areas[3]).toBe(0);
    expect(areas[1] + areas[4]).toBeCloseTo(4000, 8);
    expect(mesh.x.length).toBeLessThan(200_000);
  });

  it('a plate of two parts, apart or touching in a corner', () => {
    expect(
      components(soundMesh({ outline: [box(0, 0, 10, 10), box(20, 0, 10, 10)], regions: [] }, () => 2).mesh).count,
    ).toBe(2);
    const touching = soundMesh({ outline: [box(0, 0, 10, 10), box(10, 10, 10, 10)], regions: [] }, () => 2);
    expect(meshFaults(touching.mesh)).toEqual([]);
  });

  it('two thousand drilled holes as regions', () => {
    const regions: Ring[] = [];
    for (let i = 0; i < 50; i++)
      for (let j = 0; j < 40; j++) regions.push(disc(i * 1.5 - 37, j * 1.2 - 23.4, 0.6, 0.02));
    const { areas } = soundMesh({ outline: [plate], regions }, () => 1);
    expect(sum(areas.subarray(1))).toBeCloseTo(2000 * Math.PI * 0.09, 6);
  });
});

describe('limits', () => {
  it('refuses far more nodes than allowed before it makes any, naming where they are wanted', () => {
    const finest = sizeField({ base: 2, sources: [{ at: [10, 5], size: 2e-3 }], growth: 0.002 });
    for (const size of [() => 1e-4, () => 0.05, finest]) {
      const fault = refusal(() => meshDomain({ outline: [box(0, 0, 80, 50)], regions: [] }, size));
      expect(fault.code).toBe('TOO_LARGE');
      expect(fault.message).toMatch(/about \d+ nodes.*larger elements/);
      expect(fault.details).toHaveProperty('where');
    }
  });

  it('stops at the limit while refining a strip too thin for the elements', () => {
    const domain = { outline: [box(0, 0, 80, 50)], regions: [box(0, 0, 80, 0.004)] };
    const fault = refusal(() => meshDomain(domain, () => 2, { merge: 1e-6, maxNodes: 20_000 }));
    expect(fault.code).toBe('TOO_LARGE');
    expect(Math.abs((fault.details.where as Point)[1])).toBeLessThan(2);
  });

  it('keeps to 20 degrees where refinement to a larger angle does not end', () => {
    for (const seed of [14, 36]) {
      const { domain, size } = randomHead(seed);
      const mesh = meshDomain(domain, size, { minAngle: 34 });
      expect(meshFaults(mesh)).toEqual([]);
      expect(mesh.minAngle).toBeGreaterThanOrEqual(20);
      expect(mesh.minAngle).toBeLessThan(34);
    }
  });

  it('refuses a plate of no area', () => {
    const flat: Ring = [[0, 0], [1, 1], [2, 2]]; // biome-ignore format: three corners
    expect(refusal(() => meshDomain({ outline: [flat], regions: [] }, () => 1)).code).toBe('MESH');
  });
});
