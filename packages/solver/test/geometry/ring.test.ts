import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Fault } from '../../src/fault/fault.ts';
import type { Point, Ring } from '../../src/geometry/point.ts';
import { centroid, extent, perimeter, ringArea } from '../../src/geometry/region.ts';
import { shapeRing } from '../../src/geometry/ring.ts';
import type { Shape } from '../../src/geometry/shape.ts';

const relative = (value: number, expected: number) => Math.abs(value / expected - 1);

function refusal(shape: Shape): Fault {
  try {
    shapeRing(shape, { chord: 0.01, path: 'body.outline' });
  } catch (thrown) {
    if (thrown instanceof Fault) return thrown;
    throw thrown;
  }
  throw new Error('the shape was accepted');
}

describe('rings of shapes', () => {
  it('gives a circle its exact area at any fineness, within the chord', () => {
    for (const chord of [5, 0.5, 0.01, 1e-5]) {
      const ring = shapeRing({ circle: 40, centre: [3, -2] }, { chord });
      expect(relative(ringArea(ring), Math.PI * 400)).toBeLessThan(1e-13);
      const [cx, cy] = centroid([ring]);
      expect(Math.hypot(cx - 3, cy + 2)).toBeLessThan(1e-12);
      ring.forEach(([x, y], i) => {
        const [xn, yn] = ring[(i + 1) % ring.length];
        const middle = Math.hypot((x + xn) / 2 - 3, (y + yn) / 2 + 2);
        expect(Math.hypot(x - 3, y + 2)).toBeGreaterThan(20);
        expect(Math.hypot(x - 3, y + 2) - middle).toBeLessThanOrEqual(Math.max(chord, 0.035 * 20) * (1 + 1e-6));
      });
    }
  });

  it('is mirrored exactly in both axes', () => {
    const ring = shapeRing({ circle: 17 }, { chord: 0.01 });
    const key = ([x, y]: Point) => `${x + 0},${y + 0}`;
    const corners = new Set(ring.map(key));
    for (const [x, y] of ring) {
      expect(corners.has(key([-x, y]))).toBe(true);
      expect(corners.has(key([x, -y]))).toBe(true);
      expect(corners.has(key([y, x]))).toBe(true);
    }
  });

  it('gives a rounded rectangle its exact area and keeps its straight sides', () => {
    for (const corner of [0, 0.5, 3, 9.999999, 10]) {
      const ring = shapeRing({ rectangle: [30, 20], centre: [5, 1], corner }, { chord: 0.02 });
      expect(relative(ringArea(ring), 600 - (4 - Math.PI) * corner ** 2)).toBeLessThan(1e-13);
      const { min, max } = extent([ring]);
      expect([...min, ...max]).toEqual([-10, -9, 20, 11]);
    }
  });

  it('gives a square with half-side corners the area of a circle and no repeated corner', () => {
    const ring = shapeRing({ rectangle: [20, 20], corner: 10 }, { chord: 0.02 });
    expect(relative(ringArea(ring), Math.PI * 100)).toBeLessThan(1e-13);
    const least = Math.min(...ring.map(([x, y], i) => Math.hypot(x - ring.at(i - 1)![0], y - ring.at(i - 1)![1])));
    expect(least).toBeGreaterThan(perimeter(ring) / ring.length / 2);
  });

  it('turns a clockwise polygon round', () => {
    const ring = shapeRing(
      {
        polygon: [
          [0, 0],
          [0, 2],
          [3, 2],
          [3, 0],
        ],
      },
      { chord: 1 },
    );
    expect(ringArea(ring)).toBe(6);
  });

  it('accepts every star-shaped polygon, in either sense and from any corner', () => {
    const star = fc.array(fc.double({ min: 0.1, max: 10, noNaN: true }), { minLength: 5, maxLength: 40 });
    fc.assert(
      fc.property(star, fc.nat(), fc.boolean(), (radii, shift, reversed) => {
        const corners = radii.map((r, i): Point => {
          const angle = (2 * Math.PI * i) / radii.length;
          return [r * Math.cos(angle), r * Math.sin(angle)];
        });
        const start = shift % corners.length;
        const polygon = [...corners.slice(start), ...corners.slice(0, start)] as [number, number][];
        if (reversed) polygon.reverse();
        const expected = radii.reduce((sum, r, i) => sum + r * radii[(i + 1) % radii.length], 0);
        const ring = shapeRing({ polygon }, { chord: 1 });
        expect(relative(ringArea(ring), (expected * Math.sin((2 * Math.PI) / radii.length)) / 2)).toBeLessThan(1e-12);
      }),
    );
  });
});

describe('refused shapes', () => {
  const cases: [string, [number, number][], RegExp, string][] = [
    [
      'a bow tie',
      [
        [0, 0],
        [2, 2],
        [2, 0],
        [0, 2],
      ],
      /Edge 1 .* crosses edge 3/,
      'body.outline.polygon.0',
    ],
    [
      'a corner that touches an edge',
      [
        [0, 0],
        [4, 0],
        [4, 4],
        [2, 0],
        [0, 4],
      ],
      /touches/,
      'body.outline.polygon.0',
    ],
    [
      'a corner used twice',
      [
        [0, 0],
        [2, 2],
        [4, 0],
        [4, 4],
        [2, 2],
        [0, 4],
      ],
      /touches/,
      'body.outline.polygon.0',
    ],
    [
      'a spike',
      [
        [0, 0],
        [4, 0],
        [6, 0],
        [4, 0.0],
        [4, 4],
      ],
      /touches/,
      'body.outline.polygon.0',
    ],
    [
      'an edge that runs back on another',
      [
        [0, 0],
        [6, 0],
        [3, 0],
        [3, 3],
      ],
      /folds back/,
      'body.outline.polygon.0',
    ],
    [
      'a repeated corner',
      [
        [0, 0],
        [4, 0],
        [4, 0],
        [4, 4],
      ],
      /Corner 3 .* repeats the one before/,
      'body.outline.polygon.2',
    ],
    [
      'a repeated first corner',
      [
        [0, 0],
        [4, 0],
        [4, 4],
        [0, 0],
      ],
      /Corner 4 .* closes by itself/,
      'body.outline.polygon.3',
    ],
    [
      'corners on a line',
      [
        [0, 0],
        [1, 1],
        [3, 3],
      ],
      /Edge 3 .* folds back on edge 1/,
      'body.outline.polygon.2',
    ],
    [
      'corners almost on a line',
      [
        [0, 0],
        [100, 1e-9],
        [200, 0],
      ],
      /lie on a line/,
      'body.outline.polygon',
    ],
    [
      'a corner that is not a number',
      [
        [0, 0],
        [4, Number.NaN],
        [4, 4],
      ],
      /finite/,
      'body.outline.polygon.1',
    ],
    [
      'two corners',
      [
        [0, 0],
        [4, 1],
      ],
      /three or more/,
      'body.outline.polygon',
    ],
  ];
  it.each(cases)('%s', (_, polygon, message, path) => {
    const fault = refusal({ polygon });
    expect(fault.code).toBe('BAD_SHAPE');
    expect(fault.message).toMatch(message);
    expect(fault.path).toBe(path);
    expect(fault.details).toHaveProperty('expected');
    expect(fault.details).toHaveProperty('remedy');
  });

  it('a corner radius above half a side', () => {
    const fault = refusal({ rectangle: [30, 20], corner: 10.5 });
    expect(fault.message).toContain('10.5 mm');
    expect(fault.details).toMatchObject({ value: 10.5, expected: '0 to 10' });
  });

  it('a length that is zero, negative or no number', () => {
    for (const bad of [0, -3, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(refusal({ circle: bad }).code).toBe('BAD_SHAPE');
      expect(refusal({ rectangle: [4, bad] }).code).toBe('BAD_SHAPE');
    }
  });

  it('finds one crossing among twenty thousand edges in less than a second', () => {
    const n = 20000;
    const polygon = Array.from({ length: n }, (_, i): [number, number] => {
      const angle = (2 * Math.PI * i) / n;
      return [100 * Math.cos(angle), 100 * Math.sin(angle)];
    });
    const started = performance.now();
    const ring: Ring = shapeRing({ polygon }, { chord: 1 });
    expect(ring.length).toBe(n);
    const [a, b] = [polygon[700], polygon[702]];
    polygon[700] = b;
    polygon[702] = a;
    expect(refusal({ polygon }).message).toMatch(/crosses/);
    expect(performance.now() - started).toBeLessThan(1000);
  });
});
