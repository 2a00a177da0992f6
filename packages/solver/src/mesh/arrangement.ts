import { Fault } from '../fault/fault.ts';
import { mergeVertices, splitAtCrossings, splitAtVertices } from './contact.ts';
import type { MeshDomain } from './domain.ts';
import type { SizeField } from './size-field.ts';
import { looseWeb, type Web } from './web.ts';

/** Planar straight-line graph: segments meet only at shared vertices, no two alike. */
export interface Arrangement {
  /** `[nVertices]` */
  readonly x: Float64Array;
  /** `[nVertices]` */
  readonly y: Float64Array;
  /** `[2 * nSegments]` vertex pairs. */
  readonly segments: Uint32Array;
  /** `[nSegments]` alternating ring and turn: 0 the outline, r + 1 region r; the winding gained from right to left. */
  readonly bounds: readonly (readonly number[])[];
}

/** Passes after which splitting is taken not to settle. Five is the most that was seen. */
const MOST_PASSES = 40;

/**
 * Arranges all rings of a domain into one planar graph.
 *
 * The outline keeps its shape to 1e-7 of its extent. Regions move by at most `tolerance` to meet the outline, each
 * other and crossings where they nearly do, so that no sliver is left between them that only a very fine mesh could
 * fill. Grids keep every step nearly linear.
 *
 * @throws Fault MESH when the segments do not settle
 */
export function arrange(domain: MeshDomain, tolerance: SizeField): Arrangement {
  const web = looseWeb(domain, tolerance);
  for (let pass = 0; pass < MOST_PASSES; pass++) {
    const merged = mergeVertices(web);
    if (splitAtVertices(web) || merged) continue;
    if (!splitAtCrossings(web)) return packed(web);
  }
  throw new Fault('MESH', 'The edges of the regions cross in a way that does not settle; move the regions apart.', '', {
    expected: `edges that settle in ${MOST_PASSES} passes`,
    remedy: 'move the regions apart or align their edges',
  });
}

/** Vertices in use, renumbered in order of first use. */
function packed({ x, y, from, to, bounds, points }: Web): Arrangement {
  const number = new Int32Array(x.length).fill(-1);
  const kept: number[] = [];
  const take = (v: number) => {
    if (number[v] < 0) number[v] = kept.push(v) - 1;
    return number[v];
  };
  const segments = new Uint32Array(2 * from.length);
  for (let s = 0; s < from.length; s++) {
    segments[2 * s] = take(from[s]);
    segments[2 * s + 1] = take(to[s]);
  }
  points.forEach(take);
  return { x: Float64Array.from(kept, (v) => x[v]), y: Float64Array.from(kept, (v) => y[v]), segments, bounds };
}
