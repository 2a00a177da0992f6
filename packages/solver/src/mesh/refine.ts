import { Fault } from '../fault/fault.ts';
import { type Cavity, carve, emptyCavity } from './cavity.ts';
import { emptyStar, fillCavity, type Star } from './fill-cavity.ts';
import { measure, placeOffCentre, type TriangleShape } from './off-centre.ts';
import { addPiece, type PieceQueue, pieceQueue, takePiece } from './piece-queue.ts';
import { tooManyNodes } from './sample-segments.ts';
import type { SizeField } from './size-field.ts';
import { type SharpCorners, sharpCorners, spansWedge, splitPlace } from './small-angle.ts';
import { dequeue, enqueue, type TriangleQueue, triangleQueue } from './triangle-queue.ts';
import { nextEdge, type Triangulation } from './triangulation.ts';
import { walk } from './walk.ts';

/** Circumradius over that of the equilateral triangle of the wanted size above which a triangle is split. */
const OVERSIZE = 1.25;
/** Pieces shorter than this over the extent are the sign of a refinement that does not end. */
const LEAST_PIECE = 1e-10;
/** Quarter octaves of shortest edge over wanted size, from 2^-12 upwards. */
const GRADES = 64;

export interface RefineOptions {
  readonly size: SizeField;
  /** Degrees; up to about 30 the refinement ends in practice, 20.7 is proven (Ruppert 1995). */
  readonly minAngle: number;
  readonly maxNodes: number;
  /** Longer side of the mesh, mm. */
  readonly extent: number;
}

interface Refinement extends RefineOptions {
  readonly mesh: Triangulation;
  readonly triangles: TriangleQueue;
  readonly pieces: PieceQueue;
  readonly cavity: Cavity;
  readonly star: Star;
  readonly shape: TriangleShape;
  readonly corners: SharpCorners;
  /** sin^2 of the least angle: shortest^2 = 4 R^2 sin^2. */
  readonly sin2: number;
  /** Furthest off-centre over the shortest edge. */
  readonly reach: number;
}

/**
 * Delaunay refinement in place (Ruppert 1995; Chew 1989; Shewchuk 2002): every triangle too thin or too large gets a
 * node at its off-centre, unless that lies beyond a piece of a segment or in its diametral circle: then the piece is
 * split first. Pieces are split for no other reason, which leaves fewer nodes than clearing all their circles would.
 *
 * Triangles with the shortest edges over the wanted size come first and new nodes keep the wanted distance from them,
 * so the mesh grows in rows from the segments inwards.
 *
 * @throws Fault TOO_LARGE at more than `maxNodes` nodes, MESH when the refinement does not end
 */
export function refine(mesh: Triangulation, options: RefineOptions): void {
  const angle = (options.minAngle * Math.PI) / 180;
  const work: Refinement = {
    ...options,
    mesh,
    triangles: triangleQueue(GRADES),
    pieces: pieceQueue(),
    cavity: emptyCavity(),
    star: emptyStar(),
    shape: { shortest2: 0, longest2: 0, radius2: 0, shortestEdge: 0, x: 0, y: 0 },
    corners: sharpCorners(mesh),
    sin2: Math.sin(angle) ** 2,
    // The apex of an isosceles triangle with the least angle there, less 5 % so that the angle is met with room.
    reach: (0.95 * 0.5) / Math.tan(angle / 2),
  };
  for (let t = 0; t < mesh.triangles; t++) enqueue(work.triangles, t, grade(work, t));
  for (;;) {
    const piece = takePiece(work.pieces);
    if (piece >= 0) {
      splitPiece(work, piece);
      continue;
    }
    const t = dequeue(work.triangles);
    if (t < 0) return;
    improve(work, t);
  }
}

/** Whether the point lies inside the circle that has half-edge e as its diameter. */
function encroaches({ origin, x, y }: Triangulation, e: number, px: number, py: number): boolean {
  const a = origin[e];
  const b = origin[nextEdge(e)];
  return (x[a] - px) * (x[b] - px) + (y[a] - py) * (y[b] - py) < 0;
}

/** Measures triangle t; -1 if it may stay, otherwise lower the shorter its shortest edge over the wanted size. */
function grade(work: Refinement, t: number): number {
  const { mesh, shape } = work;
  const { origin, piece, x, y } = mesh;
  measure(shape, mesh, t);
  const a = origin[3 * t];
  const b = origin[3 * t + 1];
  const c = origin[3 * t + 2];
  const wanted = work.size((x[a] + x[b] + x[c]) / 3, (y[a] + y[b] + y[c]) / 3);
  const large = 3 * shape.radius2 > (OVERSIZE * wanted) ** 2;
  if (!large && !isThin(work)) return -1;
  if (shape.longest2 < (2 * wanted) ** 2) {
    const e = shape.shortestEdge;
    // An angle between two pieces is given; nothing mends it.
    if (piece[nextEdge(e)] >= 0 && piece[nextEdge(nextEdge(e))] >= 0) return -1;
    if (spansWedge(mesh, work.corners, t, e)) return -1;
  }
  const octaves = Math.log2(shape.shortest2 / (wanted * wanted)) / 2;
  return Math.min(GRADES - 1, Math.max(0, Math.floor(4 * (octaves + 12))));
}

function isThin({ shape, sin2 }: Refinement): boolean {
  return !(shape.shortest2 >= 4 * shape.radius2 * sin2);
}

/** Adds the off-centre of triangle t; when pieces are in its way these are split first and the triangle waits. */
function improve(work: Refinement, t: number): void {
  const { mesh, shape, cavity } = work;
  const { origin, piece } = mesh;
  const own = grade(work, t);
  const a = origin[shape.shortestEdge];
  const b = origin[nextEdge(shape.shortestEdge)];
  const wanted = work.size((mesh.x[a] + mesh.x[b]) / 2, (mesh.y[a] + mesh.y[b]) / 2);
  placeOffCentre(shape, mesh, wanted, work.reach);

  const found = walk(mesh, t, shape.x, shape.y);
  if (found < 0) {
    addPiece(work.pieces, piece[-1 - found]);
    enqueue(work.triangles, t, own);
    return;
  }
  // Should rounding leave no valid cavity, the triangle stays as it is.
  if (!carve(mesh, cavity, 3 * found, false, shape.x, shape.y)) return;
  let barred = false;
  for (let i = 0; i < cavity.edgeCount; i++) {
    const e = cavity.edges[i];
    if (piece[e] < 0 || !encroaches(mesh, e, shape.x, shape.y)) continue;
    addPiece(work.pieces, piece[e]);
    barred = true;
  }
  if (barred) enqueue(work.triangles, t, own);
  else addNode(work, -1, shape.x, shape.y);
}

function splitPiece(work: Refinement, piece: number): void {
  const { mesh, corners, extent } = work;
  const { x, y, origin } = mesh;
  const e = mesh.pieceEdge[piece];
  const a = origin[e];
  const b = origin[nextEdge(e)];
  const length = Math.sqrt(length2(mesh, e));
  const place = splitPlace(length, corners.shelled[a] === 1, corners.shelled[b] === 1, extent);
  const px = x[a] + place * (x[b] - x[a]);
  const py = y[a] + place * (y[b] - y[a]);
  if (length < LEAST_PIECE * extent || !carve(mesh, work.cavity, e, true, px, py))
    throw new Fault(
      'MESH',
      `Refining the mesh to ${work.minAngle} degrees does not end near [${Number(px.toPrecision(6))}, ${Number(py.toPrecision(6))}]; move the shapes that meet there apart or align them.`,
      '',
      { where: [px, py], value: length, expected: 'edges that can be split', remedy: 'move or align the shapes there' },
    );
  addNode(work, e, px, py);
}

function length2({ origin, x, y }: Triangulation, e: number): number {
  const a = origin[e];
  const b = origin[nextEdge(e)];
  return (x[b] - x[a]) ** 2 + (y[b] - y[a]) ** 2;
}

function addNode(work: Refinement, split: number, x: number, y: number): void {
  const { mesh, cavity, star } = work;
  if (mesh.nodes >= work.maxNodes) throw tooManyNodes(Infinity, work.maxNodes, [x, y]);
  fillCavity(mesh, cavity, star, split, x, y);
  for (let i = 0; i < star.count; i++) enqueue(work.triangles, star.triangles[i], grade(work, star.triangles[i]));
}
