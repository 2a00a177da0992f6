import { triangleNeighbours } from '../mesh/adjacency.ts';
import type { Mesh } from '../mesh/mesh.ts';
import type { StressLayer } from '../section/stress-layers.ts';
import type { CornerGroups } from './corner-groups.ts';

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

/**
 * A part of a meshed plate: where its stress is taken and where it ends.
 *
 * @param groups of the corners of triangles by section
 * @param across triangle across each side, where that is known
 */
export function stressPart(
  { mesh, section, layers }: Pick<StressPart, 'mesh' | 'section' | 'layers'>,
  groups: CornerGroups,
  across: Int32Array = triangleNeighbours(mesh),
): StressPart {
  const layer: StressLayer[] = [];
  const corner: number[] = [];
  const placeOf = new Int32Array(groups.corner.length).fill(-1);
  for (let group = 0; group < placeOf.length; group++) {
    const own = layers[section[Math.floor(groups.corner[group] / 3)]];
    if (own.length > 0) placeOf[group] = corner.length;
    for (const each of own) {
      layer.push(each);
      corner.push(groups.corner[group]);
    }
  }
  const placeAt = new Int32Array(groups.of.length);
  for (let at = 0; at < placeAt.length; at++) placeAt[at] = placeOf[groups.of[at]];
  const places = { layer, corner: Uint32Array.from(corner) };
  return { mesh, section, layers, places, placeAt, edges: endsOf(across, placeAt) };
}

function endsOf(across: Int32Array, placeAt: Int32Array): Uint32Array {
  const edges: number[] = [];
  for (let side = 0; side < across.length; side++)
    if (placeAt[side] >= 0 && (across[side] < 0 || placeAt[3 * across[side]] < 0)) edges.push(side);
  return Uint32Array.from(edges);
}
