import Constrainautor from '@kninnug/constrainautor';
import Delaunator from 'delaunator';
import { Fault } from '../fault/fault.ts';
import type { Arrangement } from './arrangement.ts';
import { classify } from './classify.ts';
import type { SampledSegments } from './sample-segments.ts';
import type { Triangulation } from './triangulation.ts';

/**
 * Constrained Delaunay triangulation of the plate: every piece of a segment is an edge, triangles outside are gone.
 *
 * @throws Fault MESH when a piece cannot be made an edge or nothing of the plate is left
 */
export function triangulate(arrangement: Arrangement, sampled: SampledSegments): Triangulation {
  const { x, y, pieces, pieceSegment } = sampled;
  const { triangles, halfedges, piece } = constrained(framed(x, y), pieces);
  const region = classify(triangles, halfedges, piece, pieces, pieceSegment, arrangement.bounds);
  return inside(sampled, arrangement.segments, triangles, halfedges, piece, region);
}

/**
 * Points for the library, `[2 * (nNodes + 4)]`, with four more around them at the end: nodes cut into a slanted side
 * are collinear but for rounding, and on the hull they would leave slivers that pieces cannot be constrained through.
 *
 * The library counts y downwards; with x and y exchanged its counter-clockwise is ours.
 */
function framed(x: Float64Array, y: Float64Array): Float64Array {
  const exchanged = new Float64Array(2 * x.length + 8);
  let [xmin, ymin, xmax, ymax] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let v = 0; v < x.length; v++) {
    exchanged[2 * v] = y[v];
    exchanged[2 * v + 1] = x[v];
    xmin = Math.min(xmin, x[v]);
    xmax = Math.max(xmax, x[v]);
    ymin = Math.min(ymin, y[v]);
    ymax = Math.max(ymax, y[v]);
  }
  const margin = Math.max(xmax - xmin, ymax - ymin);
  const [left, right, below, above] = [xmin - margin, xmax + margin, ymin - margin, ymax + margin];
  exchanged.set([below, left, below, right, above, right, above, left], 2 * x.length);
  return exchanged;
}

interface Constrained {
  readonly triangles: Uint32Array;
  readonly halfedges: Int32Array;
  /** `[3 * nTriangles]` piece that the half-edge lies on, in either sense, -1 for none. */
  readonly piece: Int32Array;
}

function constrained(coordinates: Float64Array, pieces: Uint32Array): Constrained {
  const delaunay = new Delaunator(coordinates);
  const { triangles, halfedges } = delaunay;
  if (triangles.length === 0) throw emptyPlate();
  const edges = new Constrainautor(delaunay);
  for (let i = 0; i < pieces.length; i += 2) {
    try {
      edges.constrainOne(pieces[i], pieces[i + 1]);
    } catch (thrown) {
      const at = [coordinates[2 * pieces[i] + 1], coordinates[2 * pieces[i]]];
      throw new Fault(
        'MESH',
        `An edge near [${at.map((c) => Number(c.toPrecision(6)))}] cannot be followed by the mesh; move the shapes that meet there apart or align them.`,
        '',
        {
          where: at,
          cause: String(thrown),
          expected: 'edges apart from each other',
          remedy: 'move or align the shapes',
        },
      );
    }
  }
  edges.delaunify(true);
  return { triangles, halfedges, piece: piecesOf(triangles, pieces, coordinates.length / 2) };
}

/** Which piece each half-edge lies on, found among the few pieces of its lower node. */
function piecesOf(triangles: Uint32Array, pieces: Uint32Array, nodes: number): Int32Array {
  const start = new Uint32Array(nodes + 1);
  for (let i = 0; i < pieces.length; i += 2) start[Math.min(pieces[i], pieces[i + 1]) + 1]++;
  for (let v = 0; v < nodes; v++) start[v + 1] += start[v];
  const filled = start.slice(0, nodes);
  const byNode = new Uint32Array(pieces.length / 2);
  for (let i = 0; i < pieces.length; i += 2) byNode[filled[Math.min(pieces[i], pieces[i + 1])]++] = i / 2;

  return Int32Array.from(triangles, (a, e) => {
    const b = triangles[e % 3 === 2 ? e - 2 : e + 1];
    const low = Math.min(a, b);
    for (let k = start[low]; k < start[low + 1]; k++) {
      const i = 2 * byNode[k];
      if (pieces[i] + pieces[i + 1] === a + b) return byNode[k];
    }
    return -1;
  });
}

/** The triangles on the plate, with their nodes renumbered in order of first use. */
function inside(
  { x, y, onSegment, pieceSegment }: SampledSegments,
  segments: Uint32Array,
  triangles: Uint32Array,
  halfedges: Int32Array,
  piece: Int32Array,
  region: Int32Array,
): Triangulation {
  const number = new Int32Array(region.length).fill(-1);
  let count = 0;
  for (let t = 0; t < region.length; t++) if (region[t] >= 0) number[t] = count++;
  if (count === 0) throw emptyPlate();

  const node = new Int32Array(x.length).fill(-1);
  const kept: number[] = [];
  const mesh: Triangulation = {
    nodes: 0,
    x: new Float64Array(0),
    y: new Float64Array(0),
    onSegment: new Int32Array(0),
    triangles: count,
    origin: new Int32Array(3 * count),
    twin: new Int32Array(3 * count),
    piece: new Int32Array(3 * count),
    region: new Int32Array(count),
    pieces: pieceSegment.length,
    pieceEdge: new Int32Array(pieceSegment.length).fill(-1),
    pieceSegment: pieceSegment.slice(),
    segmentEnds: new Int32Array(segments.length),
  };
  for (let t = 0; t < region.length; t++) {
    if (number[t] < 0) continue;
    mesh.region[number[t]] = region[t];
    for (let k = 0; k < 3; k++) {
      const [from, to] = [3 * t + k, 3 * number[t] + k];
      const v = triangles[from];
      if (node[v] < 0) node[v] = kept.push(v) - 1;
      const across = halfedges[from] < 0 ? -1 : number[Math.floor(halfedges[from] / 3)];
      mesh.origin[to] = node[v];
      mesh.twin[to] = across < 0 ? -1 : 3 * across + (halfedges[from] % 3);
      mesh.piece[to] = piece[from];
      if (piece[from] >= 0) mesh.pieceEdge[piece[from]] = to;
    }
  }
  mesh.segmentEnds.forEach((_, i) => {
    mesh.segmentEnds[i] = node[segments[i]];
  });
  mesh.nodes = kept.length;
  mesh.x = Float64Array.from(kept, (v) => x[v]);
  mesh.y = Float64Array.from(kept, (v) => y[v]);
  mesh.onSegment = Int32Array.from(kept, (v) => onSegment[v]);
  return mesh;
}

function emptyPlate(): Fault {
  return new Fault(
    'MESH',
    'Nothing of the plate is left to mesh; enlarge the outline or reduce the openings.',
    'outline',
    {
      expected: 'a plate with an area',
      remedy: 'enlarge the outline or reduce the openings',
    },
  );
}
