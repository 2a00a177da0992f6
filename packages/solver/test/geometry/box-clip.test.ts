import { describe, expect, it } from 'vitest';
import { intersection } from '../../src/geometry/boolean.ts';
import { clipToBox } from '../../src/geometry/box-clip.ts';
import type { Ring } from '../../src/geometry/point.ts';
import { area, ringArea } from '../../src/geometry/region.ts';
import { shapeRing } from '../../src/geometry/ring.ts';

const box = { min: [-3, -2], max: [5, 4] } as const;
const sides: Ring = [
  [-3, -2],
  [5, -2],
  [5, 4],
  [-3, 4],
];

describe('the part of a ring in a box', () => {
  it('is the ring itself where all of it is inside, and nothing where none is', () => {
    const inside = shapeRing({ rectangle: [8, 6], centre: [1, 1] }, { chord: 1 });
    expect(clipToBox(inside, box)).toBe(inside);
    expect(clipToBox(shapeRing({ circle: 4, centre: [20, 1] }, { chord: 0.1 }), box)).toHaveLength(0);
  });

  it.each([
    { name: 'a disc over a corner', shape: { circle: 7, centre: [5, 4] } },
    { name: 'a disc around the box', shape: { circle: 1000, centre: [40, -20] } },
    {
      name: 'a slanting strip',
      shape: {
        polygon: [
          [-90, -100],
          [100, 90],
          [100, 98],
          [-90, -92],
        ],
      },
    },
    {
      name: 'a comb whose teeth reach in',
      shape: {
        polygon: [
          [-9, -9],
          [-2, -9],
          [-2, 1],
          [0, 1],
          [0, -9],
          [2, -9],
          [2, 1],
          [3, 1],
          [3, -9],
          [9, -9],
          [9, -30],
          [-9, -30],
        ],
      },
    },
  ])('has the area that another algorithm gives: $name', ({ shape }) => {
    const ring = shapeRing(shape as Parameters<typeof shapeRing>[0], { chord: 0.01 });
    for (const given of [ring, [...ring].reverse()]) {
      const part = clipToBox(given, box);
      const expected = area(intersection([ring], [sides]));
      expect(expected).toBeGreaterThan(0);
      expect(ringArea(part)).toBeCloseTo(given === ring ? expected : -expected, 8);
    }
  });
});
