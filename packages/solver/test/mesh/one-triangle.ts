import type { Triangulation } from '../../src/mesh/triangulation.ts';

/** A triangulation of a single triangle, its corners counter-clockwise, without segments. */
export function oneTriangle(corners: readonly (readonly [number, number])[]): Triangulation {
  return {
    nodes: 3,
    x: Float64Array.from(corners, ([x]) => x),
    y: Float64Array.from(corners, ([, y]) => y),
    onSegment: new Int32Array(3).fill(-1),
    triangles: 1,
    origin: Int32Array.of(0, 1, 2),
    twin: new Int32Array(3).fill(-1),
    piece: new Int32Array(3).fill(-1),
    region: new Int32Array(1),
    pieces: 0,
    pieceEdge: new Int32Array(0),
    pieceSegment: new Int32Array(0),
    segmentEnds: new Int32Array(0),
  };
}
