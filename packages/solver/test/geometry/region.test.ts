import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { difference, intersection, union } from '../../src/geometry/boolean.ts';
import { clipCapacity, clipToTriangle } from '../../src/geometry/convex-clip.ts';
import { distanceToRing, insideRegion, insideRing } from '../../src/geometry/inside.ts';
import { offset } from '../../src/geometry/offset.ts';
import type { Point, Ring } from '../../src/geometry/point.ts';
import { area, centroid, extent, ringArea } from '../../src/geometry/region.ts';
import { shapeRing } from '../../src/geometry/ring.ts';

const box = (x: number, y: number, width: number, height: number): Ring =>
  shapeRing({ rectangle: [width, height], centre: [x, y] }, { chord: 1 });
const disc = (x: number, y: number, diameter: number, chord = 0.01): Ring =>
  shapeRing({ circle: diameter, centre: [x, y] }, { chord });

describe('area, centroid, extent', () => {
  it('subtracts holes and does not mind a distant origin', () => {
    const at = 1e5;
    const region = [box(at, -at, 10, 4), [...box(at + 3, -at, 2, 2)].reverse()];
    expect(area(region)).toBeCloseTo(36, 9);
    expect(centroid(region)[0]).toBeCloseTo(at - 12 / 36, 9);
    expect(centroid(region)[1]).toBeCloseTo(-at, 9);
    expect(extent(region)).toEqual({ min: [at - 5, -at - 2], max: [at + 5, -at + 2] });
  });
});

describe('booleans', () => {
  it('obeys inclusion and exclusion on seeded pairs of shapes', () => {
    const shape = fc.record({
      x: fc.double({ min: -20, max: 20, noNaN: true }),
      y: fc.double({ min: -20, max: 20, noNaN: true }),
      size: fc.double({ min: 1, max: 30, noNaN: true }),
      round: fc.boolean(),
    });
    fc.assert(
      fc.property(shape, shape, (p, q) => {
        const [a, b] = [p, q].map((s) => [s.round ? disc(s.x, s.y, s.size) : box(s.x, s.y, s.size, s.size / 2)]);
        const both = area(intersection(a, b));
        expect(area(union(a, b))).toBeCloseTo(area(a) + area(b) - both, 6);
        expect(area(difference(a, b))).toBeCloseTo(area(a) - both, 6);
      }),
      { seed: 2, numRuns: 200 },
    );
  });

  it('keeps decimal coordinates as they are typed', () => {
    const cut = difference([box(0, 0, 80.2, 40.6)], [box(0.1, 0.3, 20.34, 10.002)]);
    expect(cut.length).toBe(2);
    expect(extent([cut[0]])).toEqual({ min: [-40.1, -20.3], max: [40.1, 20.3] });
    expect(area(cut)).toBeCloseTo(80.2 * 40.6 - 20.34 * 10.002, 9);
    const hole = cut.find((ring) => ringArea(ring) < 0)!;
    expect(extent([hole]).max[0]).toBe(0.1 + 20.34 / 2);
  });

  it('works alike on small and on large shapes', () => {
    for (const scale of [1e-3, 1, 1e3]) {
      const cut = difference([disc(0, 0, 40 * scale, 0.01 * scale)], [disc(10 * scale, 0, 8 * scale, 0.01 * scale)]);
      expect(area(cut) / (Math.PI * (400 - 16) * scale ** 2)).toBeCloseTo(1, 9);
    }
  });

  it('joins a list of overlapping openings before cutting them out', () => {
    const cut = difference([box(0, 0, 10, 10)], [box(-1, 0, 4, 4), box(1, 0, 4, 4)]);
    expect(area(cut)).toBeCloseTo(100 - 24, 9);
  });
});

describe('offset', () => {
  it('grows a square by its perimeter and a disc, and shrinks to nothing', () => {
    const square = [box(0, 0, 10, 6)];
    expect(area(offset(square, 2, 1e-4))).toBeCloseTo(60 + 32 * 2 + Math.PI * 4, 2);
    expect(area(offset(square, -1, 1e-4))).toBeCloseTo(8 * 4, 6);
    expect(offset(square, -4, 1e-4)).toEqual([]);
  });
});

describe('point tests', () => {
  const slanted: Ring = [
    [0.1, 0.1],
    [0.7, 0.3],
    [0.3, 0.9],
  ];

  it('counts edges and corners as inside, exactly', () => {
    for (const [x, y] of slanted) expect(insideRing(slanted, x, y)).toBe(true);
    const square = box(0, 0, 2, 2);
    expect(insideRing(square, 1, 0.3)).toBe(true);
    expect(insideRing(square, 0.25, -1)).toBe(true);
    expect(insideRing(square, 0.25, 1)).toBe(true);
    expect(insideRing(square, 1.25, 1)).toBe(false);
    expect(insideRing(square, 1 + 2 ** -52, 0.3)).toBe(false);
    expect(insideRing(square, 3, 1)).toBe(false);
    expect(insideRing([...square].reverse(), 0, 0)).toBe(true);
  });

  it('puts a point on exactly one side of an edge shared by two rings, unless it lies on it', () => {
    const [a, b, c, d]: Point[] = [
      [0.1, 0.2],
      [0.73, 0.91],
      [-0.6, 0.8],
      [0.9, -0.4],
    ];
    const [left, right] = [
      [a, b, c],
      [b, a, d],
    ];
    for (let i = 1; i < 1000; i++) {
      const t = i / 1000;
      const [x, y] = [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])];
      for (const nudge of [-1, 0, 1])
        expect(insideRing(left, x, y + nudge * 2 ** -53) || insideRing(right, x, y + nudge * 2 ** -53)).toBe(true);
    }
  });

  it('leaves holes out', () => {
    const region = [box(0, 0, 10, 10), [...box(0, 0, 4, 4)].reverse()];
    expect(insideRegion(region, 0, 0)).toBe(false);
    expect(insideRegion(region, 2, 0)).toBe(true);
    expect(insideRegion(region, 3, 0)).toBe(true);
  });

  it('measures the distance to edges and corners', () => {
    expect(distanceToRing(box(0, 0, 2, 2), 0.5, 0)).toBe(0.5);
    expect(distanceToRing(box(0, 0, 2, 2), 4, 5)).toBe(5);
  });
});

describe('clipping to a triangle', () => {
  const flat = (ring: Ring) => Float64Array.from(ring.flat());
  const clip = (polygon: Ring, triangle: Ring): Ring => {
    const [out, scratch] = [0, 0].map(() => new Float64Array(clipCapacity(polygon.length)));
    const count = clipToTriangle(flat(polygon), polygon.length, flat(triangle), out, scratch);
    return Array.from({ length: count }, (_, i) => [out[2 * i], out[2 * i + 1]] as const);
  };
  const coordinate = fc.double({ min: -10, max: 10, noNaN: true });

  it('agrees with the general boolean on seeded stars and triangles, concave ones too', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 1, max: 9, noNaN: true }), { minLength: 5, maxLength: 14 }),
        fc.tuple(coordinate, coordinate, coordinate, coordinate, coordinate, coordinate),
        (radii, [x0, y0, x1, y1, x2, y2]) => {
          const star = radii.map((r, i): Point => {
            const angle = (2 * Math.PI * i) / radii.length;
            return [r * Math.cos(angle), r * Math.sin(angle)];
          });
          let triangle: Ring = [
            [x0, y0],
            [x1, y1],
            [x2, y2],
          ];
          if (ringArea(triangle) < 0) triangle = [...triangle].reverse();
          fc.pre(ringArea(triangle) > 0.01);
          const part = clip(star, triangle);
          const found = part.length > 2 ? ringArea(part) : 0;
          expect(found).toBeCloseTo(area(intersection([star], [triangle])), 6);
        },
      ),
      { seed: 3, numRuns: 300 },
    );
  });

  it('never exceeds its buffers, on a comb that every side of the triangle cuts', () => {
    const teeth = 40;
    const comb: Point[] = [];
    for (let i = 0; i < teeth; i++) comb.push([i, i % 2 === 0 ? -50 : 50]);
    comb.push([teeth, 60], [-1, 60]);
    const part = clip(comb, [
      [5, -20],
      [35, -20],
      [20, 30],
    ]);
    expect(2 * part.length).toBeLessThanOrEqual(clipCapacity(comb.length));
    expect(ringArea(part)).not.toBe(0);
  });

  it('returns nothing for a polygon outside', () => {
    expect(
      clip(box(20, 0, 4, 4), [
        [0, 0],
        [1, 0],
        [0, 1],
      ]),
    ).toEqual([]);
  });
});
