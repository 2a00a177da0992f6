import { nextEdge, type Triangulation } from './triangulation.ts';

/** Corners of the input sharper than this are split on shells around them (Ruppert 1995, Shewchuk 2002). */
const SHELL_ANGLE = 60;
/** Corners sharper than this keep thin triangles: what is put in to mend one makes the next. */
const KEPT_ANGLE = 30;

/** `[nodes]` 1 for nodes where two segments meet at less than 60 degrees. */
export function sharpNodes(mesh: Triangulation): Uint8Array {
  const { x, y, origin, piece, pieceEdge, pieces, nodes } = mesh;
  const degree = new Uint32Array(nodes + 1);
  const ends: number[] = [];
  for (let p = 0; p < pieces; p++) {
    const e = pieceEdge[p];
    if (e < 0 || piece[e] !== p) continue;
    const [a, b] = [origin[e], origin[nextEdge(e)]];
    ends.push(a, b, b, a);
    degree[a + 1]++;
    degree[b + 1]++;
  }
  for (let v = 0; v < nodes; v++) degree[v + 1] += degree[v];
  const filled = degree.slice(0, nodes);
  const direction = new Float64Array(ends.length / 2);
  for (let i = 0; i < ends.length; i += 2) {
    const [a, b] = [ends[i], ends[i + 1]];
    direction[filled[a]++] = Math.atan2(y[b] - y[a], x[b] - x[a]);
  }

  const sharp = new Uint8Array(nodes);
  const least = (SHELL_ANGLE * Math.PI) / 180;
  for (let v = 0; v < nodes; v++) {
    const around = direction.subarray(degree[v], degree[v + 1]).sort();
    for (let i = 0; i < around.length; i++) {
      const next = i + 1 < around.length ? around[i + 1] : around[0] + 2 * Math.PI;
      if (around.length > 1 && next - around[i] < least * (1 - 1e-9)) sharp[v] = 1;
    }
  }
  return sharp;
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
 * Whether the edge u-v spans a corner sharper than 30 degrees, about square to it: both nodes inside of segments that
 * meet in the corner.
 */
export function spansSharpCorner(mesh: Triangulation, u: number, v: number): boolean {
  const { x, y, onSegment, segmentEnds } = mesh;
  const [p, q] = [onSegment[u], onSegment[v]];
  if (p < 0 || q < 0 || p === q) return false;
  const [a, b] = [segmentEnds[2 * p], segmentEnds[2 * p + 1]];
  const [c, d] = [segmentEnds[2 * q], segmentEnds[2 * q + 1]];
  const corner = a === c || a === d ? a : b === c || b === d ? b : -1;
  if (corner < 0) return false;
  const [ux, uy, vx, vy] = [x[u] - x[corner], y[u] - y[corner], x[v] - x[corner], y[v] - y[corner]];
  const [ru, rv] = [Math.hypot(ux, uy), Math.hypot(vx, vy)];
  if (ux * vx + uy * vy < Math.cos((KEPT_ANGLE * Math.PI) / 180) * ru * rv) return false;
  return Math.abs(ru - rv) <= 0.75 * Math.hypot(ux - vx, uy - vy);
}
