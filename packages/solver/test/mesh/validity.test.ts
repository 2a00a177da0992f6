import { describe, expect, it } from 'vitest';
import type { Mesh } from '../../src/mesh/mesh.ts';
import { components, meshFaults } from '../../src/mesh/validity.ts';

/** Unit square of two triangles. */
const square: Mesh = {
  x: Float64Array.of(0, 1, 1, 0),
  y: Float64Array.of(0, 0, 1, 1),
  triangles: Uint32Array.of(0, 1, 2, 0, 2, 3),
  region: Uint32Array.of(0, 0),
  boundary: Uint32Array.of(0, 1, 1, 2, 2, 3, 3, 0),
  minAngle: 45,
};

describe('faults of a mesh', () => {
  it('finds none in a sound one', () => {
    expect(meshFaults(square)).toEqual([]);
  });

  const broken: [string, Partial<Mesh>, RegExp][] = [
    ['a triangle turned over', { triangles: Uint32Array.of(0, 1, 2, 0, 3, 2) }, /area -0.5/],
    ['a triangle twice', { triangles: Uint32Array.of(0, 1, 2, 0, 1, 2) }, /several triangles/],
    ['a triangle without area', { y: Float64Array.of(0, 0, 0, 1) }, /area 0/],
    ['a loose node', { x: Float64Array.of(0, 1, 1, 0, 5), y: Float64Array.of(0, 0, 1, 1, 5) }, /node 4 .* no triangle/],
    ['a hole in the boundary list', { boundary: Uint32Array.of(0, 1, 1, 2, 2, 3) }, /3 boundary edges, where 4/],
    ['an inner edge as boundary', { boundary: Uint32Array.of(0, 1, 1, 2, 2, 3, 0, 2) }, /0-2 is not the edge of one/],
    ['a region missing', { region: Uint32Array.of(0) }, /1 regions for 2 triangles/],
  ];
  it.each(broken)('finds %s', (_, change, message) => {
    expect(meshFaults({ ...square, ...change }).join('; ')).toMatch(message);
  });
});

describe('components', () => {
  it('numbers parts that share no node in order of their first node', () => {
    const apart: Mesh = {
      ...square,
      x: Float64Array.from({ length: 7 }),
      triangles: Uint32Array.of(0, 4, 2, 1, 3, 5, 5, 3, 6),
    };
    expect(components(apart)).toEqual({ count: 2, label: Uint32Array.of(0, 1, 0, 1, 0, 1, 1) });
    expect(components(square).count).toBe(1);
  });
});
