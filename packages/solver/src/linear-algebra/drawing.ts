import type { Graph } from './graph.ts';

/** Directions along which a drawn graph is cut: x, y, x + y, x - y. */
export const DIRECTIONS = 4;

/** A graph drawn in the plane, its vertices divided into parts as dissection goes on. */
export interface Drawing extends Graph {
  /** `[n]` coordinates, any unit. */
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** `[n]` part that a vertex belongs to now; negative once it is in a separator. */
  readonly part: Int32Array;
  /** `[4]` extent of the longest edge along each direction. */
  readonly longest: Float64Array;
}

/** A drawing with all vertices in part 0. */
export function drawGraph({ start, neighbour }: Graph, x: Float64Array, y: Float64Array): Drawing {
  const longest = new Float64Array(DIRECTIONS);
  for (let v = 0; v < x.length; v++)
    for (let e = start[v]; e < start[v + 1]; e++) {
      const dx = x[neighbour[e]] - x[v];
      const dy = y[neighbour[e]] - y[v];
      if (dx > longest[0]) longest[0] = dx;
      if (dy > longest[1]) longest[1] = dy;
      if (dx + dy > longest[2]) longest[2] = dx + dy;
      if (dx - dy > longest[3]) longest[3] = dx - dy;
    }
  return { start, neighbour, x, y, part: new Int32Array(x.length), longest };
}
