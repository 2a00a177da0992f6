import { Fault } from '../fault/fault.ts';
import type { Point } from '../geometry/point.ts';
import type { Mesh } from '../mesh/mesh.ts';

/** Part of the plate's boundary: all of it, or what lies on a straight segment. */
export type BoundaryPart = 'all' | { readonly from: Point; readonly to: Point };

/** How a boundary edge is held. */
export type Held = 'simple' | 'clamped' | 'symmetry';

export interface HeldEdge {
  readonly along: BoundaryPart;
  readonly held: Held;
}

/** Distance from the segment, relative to the extent of the mesh, at which a node still lies on it. */
const ON_SEGMENT = 1e-7;

/**
 * Boundary edges of the mesh along a part of the boundary.
 *
 * @returns indices e of edges `boundary[2 e], boundary[2 e + 1]`, ascending
 * @throws Fault OUTSIDE when no edge lies on the segment
 */
function boundaryEdges({ x, y, boundary }: Mesh, along: BoundaryPart, path: string): number[] {
  const all = Array.from({ length: boundary.length / 2 }, (_, e) => e);
  if (along === 'all') return all;
  const [[x0, y0], [x1, y1]] = [along.from, along.to];
  const length = Math.hypot(x1 - x0, y1 - y0);
  const tolerance = ON_SEGMENT * Math.max(spread(x), spread(y));
  const on = (node: number): boolean => {
    const [dx, dy] = [x[node] - x0, y[node] - y0];
    const s = (dx * (x1 - x0) + dy * (y1 - y0)) / length;
    const off = (dx * (y1 - y0) - dy * (x1 - x0)) / length;
    return Math.abs(off) <= tolerance && s >= -tolerance && s <= length + tolerance;
  };
  const found = length > tolerance ? all.filter((e) => on(boundary[2 * e]) && on(boundary[2 * e + 1])) : [];
  if (found.length === 0)
    throw new Fault(
      'OUTSIDE',
      `No edge of the plate lies on the segment from (${x0}, ${y0}) to (${x1}, ${y1}) mm given at ${path}. Give two points on one straight side of the outline or of an opening.`,
      path,
      { from: along.from, to: along.to },
    );
  return found;
}

/** How each held edge of the boundary is held, by its index; where parts overlap the later one counts. @throws Fault OUTSIDE */
export function heldEdges(mesh: Mesh, edges: readonly HeldEdge[]): ReadonlyMap<number, Held> {
  const held = new Map<number, Held>();
  edges.forEach((edge, i) => {
    for (const e of boundaryEdges(mesh, edge.along, `edges.${i}.along`)) held.set(e, edge.held);
  });
  return held;
}

function spread(values: Float64Array): number {
  let [min, max] = [Infinity, -Infinity];
  for (const value of values) {
    min = Math.min(min, value);
    max = Math.max(max, value);
  }
  return max - min;
}
