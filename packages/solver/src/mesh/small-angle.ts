import { nextEdge, type Triangulation } from './triangulation.ts';

/** Corners of the input sharper than this are split on shells around them (Ruppert 1995, Shewchuk 2002). */
const SHELL_ANGLE = 60;
/** Between the sides of a corner sharper than this, thin triangles stay: what mends one makes the next. */
const WEDGE_ANGLE = 20;

/** Corners of the input between neighbouring segments. */
export interface SharpCorners {
  /** `[nodes]` 1 for nodes where two segments meet at less than 60 degrees. */
  readonly shelled: Uint8Array;
  /** `[nSegments]` segments that meet each at less than 20 degrees, with nothing between. */
  readonly mates: readonly (readonly number[])[];
}

export function sharpCorners(mesh: Triangulation): SharpCorners {
  const { x, y, origin, piece, pieceEdge, pieceSegment, onSegment, segmentEnds } = mesh;
  const shelled = new Uint8Array(mesh.nodes);
  const mates: number[][] = Array.from({ length: segmentEnds.length / 2 }, () => []);
  const leaving = new Map<number, { readonly direction: number; readonly segment: number }[]>();
  const leave = (a: number, b: number, segment: number) => {
    if (onSegment[a] >= 0) return;
    const side = { direction: Math.atan2(y[b] - y[a], x[b] - x[a]), segment };
    const sides = leaving.get(a);
    if (sides === undefined) leaving.set(a, [side]);
    else sides.push(side);
  };
  for (let p = 0; p < mesh.pieces; p++) {
    const e = pieceEdge[p];
    if (e < 0 || piece[e] !== p) continue;
    const [a, b] = [origin[e], origin[nextEdge(e)]];
    leave(a, b, pieceSegment[p]);
    leave(b, a, pieceSegment[p]);
  }
  for (const [v, sides] of leaving) {
    if (sides.length < 2) continue;
    sides.sort((s, t) => s.direction - t.direction || s.segment - t.segment);
    sides.forEach(({ direction, segment }, i) => {
      const next = sides[(i + 1) % sides.length];
      const turn = next.direction - direction + (i + 1 < sides.length ? 0 : 2 * Math.PI);
      const angle = (turn * 180) / Math.PI;
      if (angle < SHELL_ANGLE * (1 - 1e-9)) shelled[v] = 1;
      if (angle >= WEDGE_ANGLE) return;
      mates[segment].push(next.segment);
      mates[next.segment].push(segment);
    });
  }
  return { shelled, mates };
}

/**
 * Where to split the piece a-b, 0 to 1: in the middle, or at a distance from its sharp end that is a power of two times
 * `unit`, so that the segments of a sharp corner are split alike and do not make each other be split for ever.
 */
export function splitPlace(length: number, sharpStart: boolean, sharpEnd: boolean, unit: number): number {
  if (sharpStart === sharpEnd) return 0.5;
  let shell = unit;
  while (length > 3 * shell) shell *= 2;
  while (length < 1.5 * shell) shell /= 2;
  const place = shell / length;
  return sharpStart ? place : 1 - place;
}

/**
 * Whether triangle t spans a corner sharper than 20 degrees: all its nodes lie on the two sides, and its shortest edge
 * runs from one to the other.
 */
export function spansWedge(mesh: Triangulation, { mates }: SharpCorners, t: number, shortestEdge: number): boolean {
  const { origin, onSegment, piece, pieceSegment } = mesh;
  const u = origin[shortestEdge];
  const v = origin[nextEdge(shortestEdge)];
  const w = origin[nextEdge(nextEdge(shortestEdge))];
  for (let e = 3 * t; e < 3 * t + 3; e++) {
    const side = piece[e] >= 0 ? pieceSegment[piece[e]] : onSegment[origin[e]];
    if (side < 0) continue;
    for (const mate of mates[side]) {
      const [uSide, vSide, uMate, vMate] = [
        liesOn(mesh, side, u),
        liesOn(mesh, side, v),
        liesOn(mesh, mate, u),
        liesOn(mesh, mate, v),
      ];
      const across = (uSide && vMate && !uMate && !vSide) || (uMate && vSide && !uSide && !vMate);
      if (across && (liesOn(mesh, side, w) || liesOn(mesh, mate, w))) return true;
    }
  }
  return false;
}

function liesOn({ onSegment, segmentEnds }: Triangulation, segment: number, node: number): boolean {
  return onSegment[node] === segment || segmentEnds[2 * segment] === node || segmentEnds[2 * segment + 1] === node;
}
