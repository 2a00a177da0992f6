import { triangleNeighbours } from '../mesh/adjacency.ts';
import type { Mesh } from '../mesh/mesh.ts';
import type { StressLayer } from '../section/stress-layers.ts';

/** One part of a plate on its mesh, as far as stress is concerned. */
export interface StressPart {
  readonly mesh: Mesh;
  /** `[nTriangles]` index into `layers`. */
  readonly section: Uint32Array;
  /** Layers of the part in each section; none where it is not there. */
  readonly layers: readonly (readonly StressLayer[])[];
  /** Places that stress is taken at: each layer of each section once at each of its nodes. */
  readonly places: {
    readonly layer: readonly StressLayer[];
    /** A triangle corner `3 * t + c` there: all corners at the node with the same section are alike. */
    readonly corner: Uint32Array;
  };
  /** `[3 * nTriangles]` place of the first layer at each corner, those of further layers after it; -1 off the part. */
  readonly placeAt: Int32Array;
  /** Sides `3 * t + k` of triangles, from corner k to the next, at which the part ends. */
  readonly edges: Uint32Array;
}

/** A part of a meshed plate: where its stress is taken and where it ends. */
export function stressPart({ mesh, section, layers }: Pick<StressPart, 'mesh' | 'section' | 'layers'>): StressPart {
  const { triangles } = mesh;
  const layer: StressLayer[] = [];
  const corner: number[] = [];
  const placeAt = new Int32Array(triangles.length).fill(-1);
  // The places at a node as a list, newest first; `nextAt` by place.
  const newest = new Int32Array(mesh.x.length).fill(-1);
  const nextAt: number[] = [];
  for (let at = 0; at < triangles.length; at++) {
    const own = section[Math.floor(at / 3)];
    if (layers[own].length === 0) continue;
    const node = triangles[at];
    let place = newest[node];
    while (place >= 0 && section[Math.floor(corner[place] / 3)] !== own) place = nextAt[place];
    if (place < 0) {
      place = corner.length;
      for (const each of layers[own]) {
        layer.push(each);
        corner.push(at);
        nextAt.push(newest[node]);
      }
      newest[node] = place;
    }
    placeAt[at] = place;
  }
  return {
    mesh,
    section,
    layers,
    places: { layer, corner: Uint32Array.from(corner) },
    placeAt,
    edges: endsOf(mesh, placeAt),
  };
}

function endsOf(mesh: Mesh, placeAt: Int32Array): Uint32Array {
  const across = triangleNeighbours(mesh);
  const edges: number[] = [];
  for (let side = 0; side < across.length; side++)
    if (placeAt[side] >= 0 && (across[side] < 0 || placeAt[3 * across[side]] < 0)) edges.push(side);
  return Uint32Array.from(edges);
}
