import { describe, expect, it } from 'vitest';
import { cornerGroups } from '../../src/results/corner-groups.ts';
import { sampleAreas } from '../../src/results/sample-areas.ts';

/** Four triangles about node 4 in the middle of a square, and one more to the right of it. */
const mesh = {
  x: Float64Array.of(-1, 1, 1, -1, 0, 3),
  y: Float64Array.of(-1, -1, 1, 1, 0, 0),
  triangles: Uint32Array.of(0, 1, 4, 1, 2, 4, 2, 3, 4, 3, 0, 4, 1, 5, 2),
  region: Uint32Array.of(0, 1, 2, 2, 1),
  boundary: new Uint32Array(0),
  minAngle: 45,
};

describe('areas that results are measured on', () => {
  it('have their triangles, and their nodes and sides once', () => {
    const [one, two] = sampleAreas(mesh, 1, ['A1', 'A2']);
    expect([one.name, two.name]).toEqual(['A1', 'A2']);
    expect([...one.triangles]).toEqual([1, 4]);
    expect([...one.nodes]).toEqual([1, 2, 4, 5]);
    expect([...two.triangles]).toEqual([2, 3]);
    expect([...two.nodes]).toEqual([0, 2, 3, 4]);
    const sides = ({ sides }: typeof one) =>
      Array.from({ length: sides.length / 2 }, (_, i) => [...sides.subarray(2 * i, 2 * i + 2)].sort().join('-')).sort();
    // Two triangles that share a side have five.
    expect(sides(one)).toEqual(['1-2', '1-4', '1-5', '2-4', '2-5']);
    expect(sides(two)).toEqual(['0-3', '0-4', '2-3', '2-4', '3-4']);
  });
});

describe('corners that are smoothed together', () => {
  it('are those at a node with the same section', () => {
    const { of, corner } = cornerGroups(mesh);
    const key = (at: number): string => `${mesh.triangles[at]} in ${mesh.region[Math.floor(at / 3)]}`;
    const keys = Array.from(of, (_, at) => key(at));
    of.forEach((group, at) => {
      of.forEach((other, to) => {
        expect(group === other).toBe(keys[at] === keys[to]);
      });
      expect(key(corner[group])).toBe(keys[at]);
    });
    expect(corner).toHaveLength(new Set(keys).size);
  });
});
