import { describe, expect, it } from 'vitest';
import { extent } from '../../src/geometry/region.ts';
import type { PlateProblem } from '../../src/plate/plate-problem.ts';
import { plateDomain } from '../../src/structure/plate-domain.ts';

const plate: PlateProblem = {
  plate: 1,
  outline: { rectangle: [60, 40] },
  section: { E: 66000, nu: 0.29, thickness: 4.5 },
  mesh: { size: 3 },
};
const far: [number, number] = [-28, 18];
const spot: [number, number] = [12, -6];
const corner: [number, number] = [-10, 20];
const obtuse = {
  polygon: [[-30, -20], [30, -20], [30, 20], corner] as [number, number][],
};
/** Element size at a place of the plate with these additions, mm. */
const sizeAt = ([x, y]: readonly [number, number], changes: Partial<PlateProblem>, coarsening = 1) =>
  plateDomain({ ...plate, ...changes }, [], coarsening).size(x, y);

describe('size of the elements of a plate', () => {
  it('is the one asked for away from everything', () => {
    expect(sizeAt(spot, {})).toBe(3);
    expect(sizeAt(far, { supports: [{ at: spot }], loads: [{ at: spot, force: 1 }] })).toBe(3);
  });

  it('is a third at points that hold or load it', () => {
    expect(sizeAt(spot, { supports: [{ at: spot }] })).toBeCloseTo(1, 9);
    expect(sizeAt(spot, { loads: [{ at: spot, force: 1 }] })).toBeCloseTo(1, 9);
  });

  it('is half of a bearing, from a quarter to the whole', () => {
    const bearing = (diameter: number) => sizeAt(spot, { supports: [{ at: spot, diameter }] });
    expect([0.5, 4, 5, 20].map(bearing)).toEqual([0.75, 2, 2.5, 3].map((size) => expect.closeTo(size, 9)));
  });

  it('is a side of a square area of support, from a quarter to the whole', () => {
    const pad = (side: number) =>
      sizeAt(spot, { supports: [{ at: spot, over: { rectangle: [side, side], centre: spot } }] });
    expect([0.5, 2, 9].map(pad)).toEqual([0.75, 2, 3].map((size) => expect.closeTo(size, 9)));
  });

  it('is two across a narrow region or opening, down to a fifth', () => {
    // Mean width 2 A/P of a strip 20 by b is 20 b / (20 + b).
    const strip = (b: number) => ({ rectangle: [20, b] as [number, number], centre: spot });
    const sizes = [
      [0.5, 0.6],
      [4, (20 * 4) / 24 / 2],
      [12, 3],
    ];
    for (const [b, size] of sizes) {
      const edge: [number, number] = [spot[0], spot[1] + b / 2];
      expect(sizeAt(edge, { regions: [{ shape: strip(b), section: plate.section }] })).toBeCloseTo(size, 9);
      expect(sizeAt(edge, { openings: [strip(b)] })).toBeCloseTo(size, 9);
    }
  });

  it('does not follow point loads when they are more than 64: together they are a pressure', () => {
    const loads = (count: number) => Array.from({ length: count }, () => ({ at: spot, force: 1 }));
    expect(sizeAt(spot, { loads: loads(64) })).toBeCloseTo(1, 9);
    expect(sizeAt(spot, { loads: loads(65) })).toBe(3);
  });

  it('grows by a quarter of the distance, as well as a grid can tell', () => {
    const supports = [{ at: spot }];
    const near = sizeAt([spot[0] + 4, spot[1]], { supports });
    expect(near).toBeGreaterThan(1 + 0.25 * 4 - 0.35);
    expect(near).toBeLessThan(1 + 0.25 * 4 + 0.05);
  });

  it('is coarser everywhere alike in a coarser mesh', () => {
    const supports = [{ at: spot }];
    expect(sizeAt(spot, { supports }, 1.7)).toBeCloseTo(1.7, 9);
    expect(sizeAt(far, { supports }, 1.7)).toBeCloseTo(5.1, 9);
  });

  it('is finer at an obtuse corner that is simply held, and only there', () => {
    const held = (way: 'simple' | 'clamped') => ({ outline: obtuse, edges: [{ along: 'all' as const, held: way }] });
    expect(sizeAt(corner, held('simple'))).toBeLessThan(1);
    expect(sizeAt(corner, held('clamped'))).toBe(3);
    expect(sizeAt(corner, { outline: obtuse })).toBe(3);
    expect(sizeAt([-30, -20], held('simple'))).toBeCloseTo(3, 9);
  });

  it('without a size is that of 5,000 equilateral triangles a node each two, or of 1,200 to be refined', () => {
    // A node has two triangles of area sqrt(3)/4 h^2.
    const nodes = (mesh: PlateProblem['mesh']) => (60 * 40) / (2 * (Math.sqrt(3) / 4) * sizeAt(spot, { mesh }) ** 2);
    expect(nodes(undefined)).toBeCloseTo(5000, 6);
    expect(nodes({ tolerance: 0.01 })).toBeCloseTo(1200, 6);
    expect(sizeAt(spot, { mesh: { size: 7 } })).toBe(7);
    const round = sizeAt([0, 0], { outline: { circle: 60 }, mesh: undefined });
    expect((Math.PI * 30 ** 2) / (2 * (Math.sqrt(3) / 4) * round ** 2) / 5000).toBeCloseTo(1, 1);
  });

  it('is what a caller gives instead, times the coarsening', () => {
    const grading = { size: (x: number) => 1 + x / 100, arc: 2 };
    expect(plateDomain(plate, [], 1, grading).size(10, 0)).toBeCloseTo(1.1, 12);
    expect(plateDomain(plate, [], 2, grading).size(10, 0)).toBeCloseTo(2.2, 12);
    // As given also beside a singular corner.
    const held: PlateProblem = { ...plate, outline: obtuse, edges: [{ along: 'all', held: 'simple' }] };
    expect(plateDomain(held, [], 1, grading).size(corner[0] - 1, corner[1])).toBeCloseTo(0.89, 12);
  });
});

describe('rings of a plate', () => {
  it('are refused with their path where they cross themselves', () => {
    const bow = {
      polygon: [
        [0, 0],
        [5, 5],
        [5, 0],
        [0, 6],
      ] as [number, number][],
    };
    const refused = (changes: Partial<PlateProblem>) => () => plateDomain({ ...plate, ...changes }, []);
    const fault = (path: string) => expect.objectContaining({ code: 'BAD_SHAPE', path: `${path}.polygon.0` });
    expect(refused({ outline: bow })).toThrow(fault('outline'));
    expect(refused({ openings: [{ circle: 1 }, bow] })).toThrow(fault('openings.1'));
    expect(refused({ regions: [{ shape: bow, section: plate.section }] })).toThrow(fault('regions.0.shape'));
  });

  const edges = (ring: readonly (readonly [number, number])[]) =>
    ring.map(([x, y], i) => Math.hypot(ring[(i + 1) % ring.length][0] - x, ring[(i + 1) % ring.length][1] - y));

  it('have arcs whose edges are no longer than the elements, and not much shorter', () => {
    const round: PlateProblem = { ...plate, outline: { circle: 60 }, mesh: { size: 0.5 } };
    for (const [coarsening, arc] of [
      [1, 0.5],
      [2, 1],
    ]) {
      const [ring] = plateDomain(round, [], coarsening).plate;
      expect(Math.max(...edges(ring))).toBeLessThanOrEqual(arc * (1 + 1e-9));
      expect(Math.max(...edges(ring))).toBeGreaterThan(0.95 * arc);
    }
    const [own] = plateDomain(round, [], 1, { size: () => 3, arc: 0.8 }).plate;
    expect(Math.max(...edges(own))).toBeGreaterThan(0.95 * 0.8);
  });

  it('rise above their edges by less than a two-hundredth of the elements, however small they are', () => {
    const radius = 1;
    const { plate: rings } = plateDomain({ ...plate, openings: [{ circle: 2 * radius }] }, []);
    const opening = rings[1];
    const rise = Math.max(...edges(opening)) ** 2 / (8 * radius);
    expect(rise).toBeLessThan(0.005 * 3 * 1.01);
    expect(rise).toBeGreaterThan(0.5 * 0.005 * 3);
  });

  it('are cut off one extent beyond the plate, and lead the mesh in order: regions, then areas', () => {
    const region = (height: number) => ({
      shape: { rectangle: [10, height] as [number, number] },
      section: plate.section,
    });
    const area: [number, number][] = [
      [0, 0],
      [5, 0],
      [0, 5],
    ];
    const domain = plateDomain({ ...plate, regions: [region(1000), region(30)] }, [area]);
    // Longer side 60, so from -20 - 60 to 20 + 60.
    expect(extent([domain.regions[0]])).toEqual({ min: [-5, -80], max: [5, 80] });
    expect(extent([domain.regions[1]])).toEqual({ min: [-5, -15], max: [5, 15] });
    expect(domain.areas).toEqual([area]);
    expect(domain.mesh.regions).toEqual([...domain.regions, area]);
    expect(domain.mesh.outline).toBe(domain.plate);
  });
});
