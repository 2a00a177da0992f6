import type { Cavity } from './cavity.ts';
import { makeRoom, nextEdge, type Triangulation, triangleOf } from './triangulation.ts';

/** Work space of {@link fillCavity}, reused from node to node. */
export interface Star {
  /** Triangles around the new node; their corner 2 is the node. */
  triangles: Int32Array;
  count: number;
  /** `[5 * edges]` both nodes, outer half-edge, piece and region of each edge around the cavity. */
  rim: Int32Array;
  /** `[nodes]` triangle of the star whose rim edge starts at the node. */
  from: Int32Array;
}

export function emptyStar(): Star {
  return { triangles: new Int32Array(64), count: 0, rim: new Int32Array(320), from: new Int32Array(0) };
}

/**
 * Replaces the triangles of the cavity by a star around a new node at (x, y).
 *
 * @param split half-edge of the piece that the node splits, -1 for a node off all segments; the piece keeps its number
 *   on the side where the half-edge starts, the other side gets a new one
 * @returns the new node
 */
export function fillCavity(
  mesh: Triangulation,
  cavity: Cavity,
  star: Star,
  split: number,
  x: number,
  y: number,
): number {
  makeRoom(mesh);
  const { origin, twin, piece, region, pieceEdge, pieceSegment } = mesh;
  const { edges, edgeCount } = cavity;
  const splitPiece = split < 0 ? -1 : piece[split];
  const u = split < 0 ? -1 : origin[split];
  const v = split < 0 ? -1 : origin[nextEdge(split)];

  if (star.triangles.length < edgeCount) star.triangles = new Int32Array(2 * edgeCount);
  if (star.rim.length < 5 * edgeCount) star.rim = new Int32Array(10 * edgeCount);
  if (star.from.length < mesh.x.length) star.from = new Int32Array(mesh.x.length);
  const { triangles, rim, from } = star;
  for (let i = 0; i < edgeCount; i++) {
    const e = edges[i];
    rim[5 * i] = origin[e];
    rim[5 * i + 1] = origin[nextEdge(e)];
    rim[5 * i + 2] = twin[e];
    rim[5 * i + 3] = piece[e];
    rim[5 * i + 4] = region[triangleOf(e)];
    from[rim[5 * i + 1]] = -1;
  }

  const node = mesh.nodes++;
  mesh.x[node] = x;
  mesh.y[node] = y;
  mesh.onSegment[node] = splitPiece < 0 ? -1 : pieceSegment[splitPiece];
  for (let i = 0; i < edgeCount; i++) {
    const t = i < cavity.count ? cavity.triangles[i] : mesh.triangles++;
    const e = 3 * t;
    const outer = rim[5 * i + 2];
    const own = rim[5 * i + 3];
    triangles[i] = t;
    from[rim[5 * i]] = t;
    origin[e] = rim[5 * i];
    origin[e + 1] = rim[5 * i + 1];
    origin[e + 2] = node;
    twin[e] = outer;
    if (outer >= 0) twin[outer] = e;
    twin[e + 1] = -1;
    twin[e + 2] = -1;
    piece[e] = own;
    piece[e + 1] = -1;
    piece[e + 2] = -1;
    if (own >= 0) pieceEdge[own] = e;
    region[t] = rim[5 * i + 4];
  }
  for (let i = 0; i < edgeCount; i++) {
    const e = 3 * triangles[i];
    const beside = from[origin[e + 1]];
    if (beside < 0) continue;
    twin[e + 1] = 3 * beside + 2;
    twin[3 * beside + 2] = e + 1;
  }
  star.count = edgeCount;

  if (splitPiece >= 0) {
    const other = mesh.pieces++;
    pieceSegment[other] = pieceSegment[splitPiece];
    for (let i = 0; i < edgeCount; i++) {
      const e = 3 * triangles[i];
      const [starts, ends] = [origin[e], origin[e + 1]];
      if (starts === u || starts === v) own(e + 2, starts === u ? splitPiece : other);
      if (ends === u || ends === v) own(e + 1, ends === u ? splitPiece : other);
    }
  }
  return node;

  function own(e: number, p: number): void {
    piece[e] = p;
    pieceEdge[p] = e;
  }
}
