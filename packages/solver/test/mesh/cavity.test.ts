import { describe, expect, it } from 'vitest';
import { carve, emptyCavity } from '../../src/mesh/cavity.ts';
import { emptyStar, fillCavity } from '../../src/mesh/fill-cavity.ts';
import type { Triangulation } from '../../src/mesh/triangulation.ts';
import { meshFaults } from '../../src/mesh/validity.ts';
import { walk } from '../../src/mesh/walk.ts';

/**
 * Square from (0, 0) to (2, 2) cut along the diagonal from corner 0 to corner 2; its sides are pieces 0 to 3, the
 * diagonal piece 4 or a free edge.
 */
const square = (diagonal: 4 | -1): Triangulation => ({
  nodes: 4,
  x: Float64Array.of(0, 2, 2, 0),
  y: Float64Array.of(0, 0, 2, 2),
  onSegment: new Int32Array(4).fill(-1),
  triangles: 2,
  origin: Int32Array.of(0, 1, 2, 0, 2, 3),
  twin: Int32Array.of(-1, -1, 3, 2, -1, -1),
  piece: Int32Array.of(0, 1, diagonal, diagonal, 2, 3),
  region: Int32Array.of(1, 2),
  pieces: 5,
  pieceEdge: Int32Array.of(0, 1, 4, 5, 2),
  pieceSegment: Int32Array.of(0, 1, 2, 3, 4),
  segmentEnds: Int32Array.of(0, 1, 1, 2, 2, 3, 3, 0, 0, 2),
});

function faults(mesh: Triangulation): readonly string[] {
  const boundary: number[] = [];
  for (let e = 0; e < 3 * mesh.triangles; e++)
    if (mesh.twin[e] < 0) boundary.push(mesh.origin[e], mesh.origin[e % 3 === 2 ? e - 2 : e + 1]);
  return meshFaults({
    x: mesh.x.slice(0, mesh.nodes),
    y: mesh.y.slice(0, mesh.nodes),
    triangles: Uint32Array.from(mesh.origin.subarray(0, 3 * mesh.triangles)),
    region: Uint32Array.from(mesh.region.subarray(0, mesh.triangles)),
    boundary: Uint32Array.from(boundary),
    minAngle: 0,
  });
}

describe('cavity of a new node', () => {
  it('spans free edges and stops at segments', () => {
    const cavity = emptyCavity();
    expect(carve(square(-1), cavity, 0, false, 1.5, 0.7)).toBe(true);
    expect([cavity.count, cavity.edgeCount]).toEqual([2, 4]);
    expect(carve(square(4), cavity, 0, false, 1.5, 0.7)).toBe(true);
    expect([cavity.count, cavity.edgeCount]).toEqual([1, 3]);
  });

  it('is refused for a point that cannot be joined to all its edges', () => {
    expect(carve(square(4), emptyCavity(), 0, false, 0.5, 1.5)).toBe(false);
    expect(carve(square(-1), emptyCavity(), 0, false, 1, 0)).toBe(false);
  });

  it('is filled by a conforming star, inside, on a side and on an inner segment', () => {
    for (const [split, x, y, triangles] of [
      [-1, 1.5, 0.7, 4],
      [0, 1, 0, 3],
      [2, 1, 1, 4],
    ] as const) {
      const mesh = square(split === 2 ? 4 : -1);
      const cavity = emptyCavity();
      expect(carve(mesh, cavity, Math.max(split, 0), split >= 0, x, y)).toBe(true);
      expect(fillCavity(mesh, cavity, emptyStar(), split, x, y)).toBe(4);
      expect(mesh.triangles).toBe(triangles);
      expect(faults(mesh)).toEqual([]);
    }
  });

  it('keeps pieces and regions apart where an inner segment is split', () => {
    const mesh = square(4);
    const cavity = emptyCavity();
    carve(mesh, cavity, 2, true, 1, 1);
    fillCavity(mesh, cavity, emptyStar(), 2, 1, 1);
    expect(mesh.pieces).toBe(6);
    expect(mesh.pieceSegment[5]).toBe(4);
    expect(mesh.onSegment[4]).toBe(4);
    const piecesAt = (p: number) => Array.from(mesh.piece.subarray(0, 12)).filter((piece) => piece === p).length;
    expect([0, 1, 2, 3, 4, 5].map(piecesAt)).toEqual([1, 1, 1, 1, 2, 2]);
    expect(Array.from(mesh.region.subarray(0, 4)).sort()).toEqual([1, 1, 2, 2]);
    for (let p = 0; p < 6; p++) expect(mesh.piece[mesh.pieceEdge[p]]).toBe(p);
  });
});

describe('walking', () => {
  it('finds the triangle, or the segment in the way', () => {
    expect(walk(square(-1), 0, 0.5, 1.5)).toBe(1);
    expect(walk(square(-1), 0, 1.5, 0.5)).toBe(0);
    expect(walk(square(4), 0, 0.5, 1.5)).toBe(-1 - 2);
    expect(walk(square(-1), 1, 1, -1)).toBe(-1 - 0);
  });
});
