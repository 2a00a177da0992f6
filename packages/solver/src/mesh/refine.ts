import { Fault } from '../fault/fault.ts';
import { type Cavity, carve, emptyCavity } from './cavity.ts';
import { emptyStar, fillCavity, type Star } from './fill-cavity.ts';
import { type Improvement, measure } from './improvement.ts';
import { tooManyNodes } from './sample-segments.ts';
import type { SizeField } from './size-field.ts';
import { liesOnMate, type SharpCorners, sharpCorners, spansWedge, splitPlace } from './small-angle.ts';
import { dequeue, enqueue, type TriangleQueue, triangleQueue } from './triangle-queue.ts';
import { nextEdge, type Triangulation, widened } from './triangulation.ts';
import { walk } from './walk.ts';

/** Circumradius over that of the equilateral triangle of the wanted size above which a triangle is split. */
const OVERSIZE = 1.25;
/** A piece no longer than this over the wanted size is not split merely because a node of a well-shaped triangle asks. */
const SETTLED_PIECE = 1.5;
const GRADES = 64;

export interface RefineOptions {
  readonly size: SizeField;
  /** Degrees; up to about 28 the refinement ends in practice, 20.7 is proven (Ruppert 1995). */
  readonly minAngle: number;
  readonly maxNodes: number;
  /** Length that shells around sharp corners are powers of two of, mm. */
  readonly unit: number;
}

interface Refinement extends RefineOptions {
  readonly mesh: Triangulation;
  readonly queue: TriangleQueue;
  readonly cavity: Cavity;
  readonly star: Star;
  readonly measured: Improvement;
  /** sin^2 of the least angle: shortest^2 = 4 R^2 sin^2. */
  readonly sin2: number;
  /** Furthest off-centre over the shortest edge. */
  readonly reach: number;
  readonly corners: SharpCorners;
  /** Pieces to be split, last in first out. */
  waiting: Int32Array;
  waitingCount: number;
  /** `[pieces]` */
  isWaiting: Int32Array;
}

/**
 * Delaunay refinement (Ruppert 1995; Shewchuk 2002) in place: pieces of segments with a node inside their diametral
 * circle are halved, and every triangle too thin or too large gets a node at its off-centre (Uengoer 2004), placed no
 * further than makes edges of the wanted size, so that the mesh grows inwards from edges of that size.
 *
 * @throws Fault TOO_LARGE at more than `maxNodes` nodes, MESH when a piece cannot be split
 */
export function refine(mesh: Triangulation, options: RefineOptions): void {
  const angle = (options.minAngle * Math.PI) / 180;
  const work: Refinement = {
    ...options,
    mesh,
    queue: triangleQueue(GRADES),
    cavity: emptyCavity(),
    star: emptyStar(),
    measured: { shortest2: 0, longest2: 0, radius2: 0, shortestEdge: 0 },
    sin2: Math.sin(angle) ** 2,
    reach: 0.475 / Math.tan(angle / 2),
    corners: sharpCorners(mesh),
    waiting: new Int32Array(256),
    waitingCount: 0,
    isWaiting: new Int32Array(Math.max(256, 2 * mesh.pieces)),
  };
  for (let t = 0; t < mesh.triangles; t++) review(work, t);
  for (;;) {
    while (work.waitingCount > 0) splitPiece(work);
    const t = dequeue(work.queue);
    if (t < 0) return;
    improve(work, t);
  }
}

/** Grades a new triangle and looks for pieces that its opposite corner encroaches upon. */
function review(work: Refinement, t: number): void {
  const { mesh, queue } = work;
  const { origin, piece, x, y } = mesh;
  enqueue(queue, t, grade(work, t));
  for (let e = 3 * t; e < 3 * t + 3; e++) {
    const p = piece[e];
    if (p < 0) continue;
    const a = origin[e];
    const b = origin[nextEdge(e)];
    const c = origin[nextEdge(nextEdge(e))];
    if (!encroaches(x[c], y[c], x[a], y[a], x[b], y[b])) continue;
    if (!liesOnMate(mesh, work.corners, mesh.pieceSegment[p], c)) wait(work, p);
  }
}

/** Whether p lies inside the circle whose diameter is a-b. */
function encroaches(px: number, py: number, ax: number, ay: number, bx: number, by: number): boolean {
  return (ax - px) * (bx - px) + (ay - py) * (by - py) < 0;
}

function wait(work: Refinement, piece: number): void {
  if (piece >= work.isWaiting.length) work.isWaiting = widened(work.isWaiting, new Int32Array(2 * piece));
  if (work.isWaiting[piece] === 1) return;
  work.isWaiting[piece] = 1;
  if (work.waitingCount === work.waiting.length)
    work.waiting = widened(work.waiting, new Int32Array(2 * work.waitingCount));
  work.waiting[work.waitingCount++] = piece;
}

/** -1 for a triangle that may stay; otherwise the shorter its shortest edge over the wanted size, the lower. */
function grade(work: Refinement, t: number): number {
  const { mesh, measured } = work;
  const { origin, x, y } = mesh;
  const a = origin[3 * t];
  const b = origin[3 * t + 1];
  const c = origin[3 * t + 2];
  measure(measured, x[a], y[a], x[b], y[b], x[c], y[c]);
  const wanted = work.size((x[a] + x[b] + x[c]) / 3, (y[a] + y[b] + y[c]) / 3);
  const { shortest2, longest2, radius2, shortestEdge } = measured;
  const thin = !(shortest2 >= 4 * radius2 * work.sin2);
  const large = 3 * radius2 > (OVERSIZE * wanted) ** 2;
  if (!thin && !large) return -1;
  if (longest2 < (2 * wanted) ** 2) {
    // An angle between two pieces is given; nothing mends it.
    const e = 3 * t + shortestEdge;
    if (mesh.piece[nextEdge(e)] >= 0 && mesh.piece[nextEdge(nextEdge(e))] >= 0) return -1;
    if (spansWedge(mesh, work.corners, t, e)) return -1;
  }
  const octaves = Math.log2(shortest2 / (wanted * wanted)) / 2;
  return Math.min(GRADES - 1, Math.max(0, Math.floor(4 * (octaves + 12))));
}

function improve(work: Refinement, t: number): void {
  const { mesh, measured, cavity } = work;
  const { origin, piece } = mesh;
  const before = grade(work, t);
  const thin = !(measured.shortest2 >= 4 * measured.radius2 * work.sin2);
  const e = 3 * t + measured.shortestEdge;
  const a = origin[e];
  const b = origin[nextEdge(e)];
  const c = origin[nextEdge(nextEdge(e))];
  const { x: xs, y: ys } = mesh;
  // Circumcentre relative to the middle of the shortest edge: along its normal, at a distance that the apex fixes.
  const [dx, dy] = [xs[b] - xs[a], ys[b] - ys[a]];
  const length = Math.sqrt(measured.shortest2);
  const [nx, ny] = [-dy / length, dx / length];
  const [mx, my] = [(xs[a] + xs[b]) / 2, (ys[a] + ys[b]) / 2];
  const rise = (xs[c] - mx) * nx + (ys[c] - my) * ny;
  const lateral = (xs[c] - mx) * dx + (ys[c] - my) * dy;
  const centre = (lateral * lateral) / (measured.shortest2 * 2 * rise) + (rise - measured.shortest2 / (4 * rise)) / 2;
  const wanted = Math.max(length, work.size(mx, my));
  const ideal = Math.sqrt(wanted * wanted - measured.shortest2 / 4);
  const away = Math.min(centre, ideal, work.reach * length);
  const px = mx + away * nx;
  const py = my + away * ny;

  const found = walk(mesh, t, px, py);
  if (found < 0) {
    wait(work, piece[-1 - found]);
    enqueue(work.queue, t, before);
    return;
  }
  if (!carve(mesh, cavity, 3 * found, false, px, py)) return;
  let barred = false;
  let settled = !thin;
  for (let i = 0; i < cavity.edgeCount; i++) {
    const edge = cavity.edges[i];
    const p = piece[edge];
    if (p < 0) continue;
    const [u, v] = [origin[edge], origin[nextEdge(edge)]];
    if (!encroaches(px, py, xs[u], ys[u], xs[v], ys[v])) continue;
    barred = true;
    if ((xs[u] - xs[v]) ** 2 + (ys[u] - ys[v]) ** 2 > (SETTLED_PIECE * wanted) ** 2) settled = false;
  }
  if (barred && settled) return;
  if (barred) {
    for (let i = 0; i < cavity.edgeCount; i++) {
      const edge = cavity.edges[i];
      const [u, v] = [origin[edge], origin[nextEdge(edge)]];
      if (piece[edge] >= 0 && encroaches(px, py, xs[u], ys[u], xs[v], ys[v])) wait(work, piece[edge]);
    }
    enqueue(work.queue, t, before);
    return;
  }
  addNode(work, -1, px, py);
}

function splitPiece(work: Refinement): void {
  const { mesh, cavity, unit } = work;
  const { shelled } = work.corners;
  const { x, y } = mesh;
  const p = work.waiting[--work.waitingCount];
  work.isWaiting[p] = 0;
  const e = mesh.pieceEdge[p];
  const [a, b] = [mesh.origin[e], mesh.origin[nextEdge(e)]];
  const [dx, dy] = [x[b] - x[a], y[b] - y[a]];
  const place = splitPlace(Math.hypot(dx, dy), shelled[a] === 1, shelled[b] === 1, unit);
  const [px, py] = [x[a] + place * dx, y[a] + place * dy];
  if (!carve(mesh, cavity, e, true, px, py))
    throw new Fault(
      'MESH',
      `The mesh cannot be refined at [${px}, ${py}]; move the shapes that meet there apart.`,
      '',
      {
        where: [px, py],
        expected: 'edges that can be split',
        remedy: 'move the shapes that meet there apart or align them',
      },
    );
  addNode(work, e, px, py);
}

function addNode(work: Refinement, split: number, x: number, y: number): void {
  const { mesh, cavity, star } = work;
  if (mesh.nodes >= work.maxNodes) throw tooManyNodes(Infinity, work.maxNodes, [x, y]);
  fillCavity(mesh, cavity, star, split, x, y);
  for (let i = 0; i < star.count; i++) review(work, star.triangles[i]);
}
