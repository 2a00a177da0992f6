/** Side of a vertex with respect to a cut. */
export const BEFORE = 0;
export const AFTER = 1;
export const BETWEEN = 2;

/** A band of a graph that a cut must run through, with room for the search. Vertices are numbered across the band. */
export interface Band {
  /** `[count + 1]` */
  readonly start: Uint32Array;
  /** Neighbours within the band, those farthest ahead first. */
  readonly neighbour: Uint32Array;
  /** `[count]` 1 for vertices with a neighbour before the band, or that lie there themselves. */
  readonly entry: Uint8Array;
  /** `[count]` 1 for vertices with a neighbour after the band. */
  readonly exit: Uint8Array;
  /** `[count]` vertex before this one on its path, {@link NONE} or {@link OUTSIDE}. */
  readonly previous: Int32Array;
  /** `[count]` vertex after this one on its path. */
  readonly next: Int32Array;
  /** `[2 * count]` states visited: `2v` is the arrival at v, `2v + 1` the departure. */
  readonly seen: Uint8Array;
  /** `[count]` */
  readonly cursor: Uint32Array;
  /** `[2 * count]` */
  readonly stack: Uint32Array;
  /** Results, `[count]`: the smallest cut nearest to the front and the one nearest to the back. */
  readonly front: Uint8Array;
  readonly back: Uint8Array;
}

/** Not on a path. */
const NONE = -1;
/** End of a path: what lies before or after the band. */
const OUTSIDE = -2;

/** Room for bands of up to `n` vertices with up to `nNeighbours` entries. */
export function bandFor(n: number, nNeighbours: number): Band {
  return {
    start: new Uint32Array(n + 1),
    neighbour: new Uint32Array(nNeighbours),
    entry: new Uint8Array(n),
    exit: new Uint8Array(n),
    previous: new Int32Array(n),
    next: new Int32Array(n),
    seen: new Uint8Array(2 * n),
    cursor: new Uint32Array(n),
    stack: new Uint32Array(2 * n),
    front: new Uint8Array(n),
    back: new Uint8Array(n),
  };
}

/**
 * Smallest set of vertices that parts what lies before a band from what lies after it: as many as there are disjoint
 * paths across (Menger 1927), found by augmenting paths in the network of vertices of capacity one (Ford and Fulkerson
 * 1956; Even and Tarjan 1975).
 */
export function minimumVertexCuts(band: Band, count: number): void {
  const { previous, next, entry, exit, seen, front, back } = band;
  previous.fill(NONE, 0, count);
  next.fill(NONE, 0, count);
  while (search(band, count, entry, exit, previous, next));
  for (let v = 0; v < count; v++) front[v] = seen[2 * v] === 0 ? AFTER : seen[2 * v + 1] === 0 ? BETWEEN : BEFORE;
  // No path is left to find, so the same search from the back ends at the cut nearest to the back.
  search(band, count, exit, entry, next, previous);
  for (let v = 0; v < count; v++) back[v] = seen[2 * v] === 0 ? BEFORE : seen[2 * v + 1] === 0 ? BETWEEN : AFTER;
}

/**
 * One pass of depth-first searches from every entry for more paths to an exit; each state is visited once.
 *
 * @returns false when there are no more; `seen` then marks all that an entry reaches
 */
function search(
  { start, neighbour, seen, cursor, stack }: Band,
  count: number,
  entry: Uint8Array,
  exit: Uint8Array,
  previous: Int32Array,
  next: Int32Array,
): boolean {
  seen.fill(0, 0, 2 * count);
  let found = false;
  for (let v = 0; v < count; v++) {
    if (entry[v] === 0 || seen[2 * v] === 1) continue;
    let depth = 0;
    stack[0] = 2 * v;
    seen[2 * v] = 1;
    while (depth >= 0) {
      const state = stack[depth];
      const u = state >>> 1;
      let step = NONE;
      if ((state & 1) === 0) {
        // Through a vertex that is free; from one on a path, back along it.
        if (previous[u] === NONE) step = state + 1;
        else if (previous[u] !== OUTSIDE) step = 2 * previous[u] + 1;
      } else if (exit[u] === 1 && next[u] !== OUTSIDE) {
        follow(stack, depth, previous, next);
        found = true;
        break;
      } else {
        let c = cursor[u];
        const end = start[u + 1];
        while (c < end && step === NONE) {
          const w = 2 * neighbour[c++];
          if (seen[w] === 0) step = w;
        }
        cursor[u] = c;
        if (step === NONE && previous[u] !== NONE) step = state - 1;
      }
      if (step === NONE || seen[step] === 1) {
        depth--;
        continue;
      }
      seen[step] = 1;
      if ((step & 1) === 1) cursor[step >>> 1] = start[step >>> 1];
      stack[++depth] = step;
    }
  }
  return found;
}

/** Adds the path on the stack, taking back what it runs against. */
function follow(stack: Uint32Array, depth: number, previous: Int32Array, next: Int32Array): void {
  let from = OUTSIDE;
  for (let k = 0; k <= depth; k++) {
    const v = stack[k] >>> 1;
    if ((stack[k] & 1) === 1) from = v;
    else if (k > 0 && stack[k - 1] === stack[k] + 1) {
      previous[v] = NONE;
      next[v] = NONE;
    } else {
      previous[v] = from;
      if (from !== OUTSIDE) next[from] = v;
    }
  }
  next[from] = OUTSIDE;
}
