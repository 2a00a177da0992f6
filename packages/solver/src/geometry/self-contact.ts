import { orientation } from './orientation.ts';
import type { Point, Ring } from './point.ts';

/** Two edges of a ring that meet where they should not; edge i runs from corner i to the next. */
export interface SelfContact {
  readonly edges: readonly [number, number];
  readonly kind: 'crosses' | 'touches' | 'folds back on';
  readonly at: Point;
}

/**
 * The first pair of edges that cross or touch, or a corner at which the ring folds back on itself. Exact.
 *
 * Edges sorted by their left end are compared while their x ranges overlap.
 */
export function selfContact(ring: Ring): SelfContact | undefined {
  const n = ring.length;
  const left = (i: number) => Math.min(ring[i][0], ring[(i + 1) % n][0]);
  const order = Array.from(ring, (_, i) => i).sort((i, j) => left(i) - left(j) || i - j);
  for (let a = 0; a < n; a++) {
    const i = order[a];
    const right = Math.max(ring[i][0], ring[(i + 1) % n][0]);
    for (let b = a + 1; b < n && left(order[b]) <= right; b++) {
      const j = order[b];
      const contact = edgeContact(ring, Math.min(i, j), Math.max(i, j));
      if (contact !== undefined) return contact;
    }
  }
  return undefined;
}

function edgeContact(ring: Ring, i: number, j: number): SelfContact | undefined {
  const n = ring.length;
  const [p, q, r, s] = [ring[i], ring[(i + 1) % n], ring[j], ring[(j + 1) % n]];
  if (Math.max(p[1], q[1]) < Math.min(r[1], s[1]) || Math.max(r[1], s[1]) < Math.min(p[1], q[1])) return undefined;
  if (j === i + 1) return foldsBack(p, q, s) ? { edges: [i, j], kind: 'folds back on', at: q } : undefined;
  if (i === 0 && j === n - 1) return foldsBack(r, p, q) ? { edges: [j, i], kind: 'folds back on', at: p } : undefined;

  const rSide = Math.sign(orientation(...p, ...q, ...r));
  const sSide = Math.sign(orientation(...p, ...q, ...s));
  const pSide = Math.sign(orientation(...r, ...s, ...p));
  const qSide = Math.sign(orientation(...r, ...s, ...q));
  if (rSide * sSide < 0 && pSide * qSide < 0) return { edges: [i, j], kind: 'crosses', at: crossing(p, q, r, s) };
  // Every corner is the end of an edge, so ends are enough.
  if (sSide === 0 && between(p, q, s)) return { edges: [i, j], kind: 'touches', at: s };
  if (qSide === 0 && between(r, s, q)) return { edges: [i, j], kind: 'touches', at: q };
  return undefined;
}

/** Whether the path a-b-c turns by exactly half a turn at b. */
function foldsBack(a: Point, b: Point, c: Point): boolean {
  const dot = (a[0] - b[0]) * (c[0] - b[0]) + (a[1] - b[1]) * (c[1] - b[1]);
  return dot > 0 && orientation(...a, ...b, ...c) === 0;
}

/** Whether c, on the line through a and b, lies on the segment a-b. */
function between(a: Point, b: Point, c: Point): boolean {
  return (c[0] - a[0]) * (c[0] - b[0]) <= 0 && (c[1] - a[1]) * (c[1] - b[1]) <= 0;
}

/** Where the segments p-q and r-s cross. */
function crossing(p: Point, q: Point, r: Point, s: Point): Point {
  const fromP = Math.abs(orientation(...r, ...s, ...p));
  const fromQ = Math.abs(orientation(...r, ...s, ...q));
  const t = fromP / (fromP + fromQ);
  return [p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])];
}
