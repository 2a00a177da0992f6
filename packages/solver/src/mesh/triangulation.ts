/**
 * Constrained Delaunay triangulation that grows while it is refined.
 *
 * Half-edge e = 3 t + k runs from corner k of triangle t to the next, counter-clockwise; `twin[e]` is the half-edge that
 * runs back, -1 on the boundary. Arrays have room to spare: only the first `nodes`, `triangles` and `pieces` count.
 */
export interface Triangulation {
  nodes: number;
  x: Float64Array;
  y: Float64Array;
  /** `[nodes]` segment of the arrangement that the node lies inside of, -1 for its vertices and for inner nodes. */
  onSegment: Int32Array;
  triangles: number;
  /** `[3 * triangles]` node where the half-edge starts. */
  origin: Int32Array;
  /** `[3 * triangles]` */
  twin: Int32Array;
  /** `[3 * triangles]` piece of a segment that the half-edge lies on, -1 for a free edge. */
  piece: Int32Array;
  /** `[triangles]` region as in `Mesh`. */
  region: Int32Array;
  pieces: number;
  /** `[pieces]` one half-edge of the piece. */
  pieceEdge: Int32Array;
  /** `[pieces]` segment of the arrangement that the piece is part of. */
  pieceSegment: Int32Array;
  /** `[2 * nSegments]` nodes at both ends of each segment of the arrangement, -1 where they are off the plate. */
  readonly segmentEnds: Int32Array;
}

export function nextEdge(e: number): number {
  return e % 3 === 2 ? e - 2 : e + 1;
}

export function triangleOf(e: number): number {
  return (e / 3) | 0;
}

/** Makes room for one more node, with the two triangles and the piece of a segment that come with it. */
export function makeRoom(mesh: Triangulation): void {
  if (mesh.nodes + 1 > mesh.x.length) {
    const room = 2 * mesh.x.length + 64;
    mesh.x = widened(mesh.x, new Float64Array(room));
    mesh.y = widened(mesh.y, new Float64Array(room));
    mesh.onSegment = widened(mesh.onSegment, new Int32Array(room));
  }
  if (mesh.triangles + 2 > mesh.region.length) {
    const room = 2 * mesh.region.length + 64;
    mesh.origin = widened(mesh.origin, new Int32Array(3 * room));
    mesh.twin = widened(mesh.twin, new Int32Array(3 * room));
    mesh.piece = widened(mesh.piece, new Int32Array(3 * room));
    mesh.region = widened(mesh.region, new Int32Array(room));
  }
  if (mesh.pieces + 1 > mesh.pieceEdge.length) {
    const room = 2 * mesh.pieces + 64;
    mesh.pieceEdge = widened(mesh.pieceEdge, new Int32Array(room));
    mesh.pieceSegment = widened(mesh.pieceSegment, new Int32Array(room));
  }
}

/** The wider array with the contents of the narrow one. */
export function widened<T extends Float64Array | Int32Array>(narrow: T, wide: T): T {
  wide.set(narrow);
  return wide;
}
