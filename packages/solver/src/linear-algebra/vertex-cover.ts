/** Bipartite graph: left vertex `u` meets the right vertices `to[start[u] .. start[u + 1])`. */
export interface Bipartite {
  readonly nLeft: number;
  readonly nRight: number;
  /** `[nLeft + 1]` */
  readonly start: Uint32Array;
  readonly to: Uint32Array;
}

/** Vertices of a cover, 1 = in the cover. */
export interface VertexCover {
  readonly left: Uint8Array;
  readonly right: Uint8Array;
  readonly size: number;
}

/**
 * Smallest set of vertices that touches every edge (Konig 1931), from a maximum matching.
 *
 * With Z the vertices that alternating paths reach from unmatched left vertices, the cover is the left part outside Z
 * and the right part inside Z.
 */
export function minimumVertexCover(graph: Bipartite): VertexCover {
  const { nLeft, nRight, start, to } = graph;
  const { matchLeft, matchRight } = maximumMatching(graph);
  const left = new Uint8Array(nLeft).fill(1);
  const right = new Uint8Array(nRight);
  const queue = new Uint32Array(nLeft);
  let tail = 0;
  for (let u = 0; u < nLeft; u++)
    if (matchLeft[u] < 0) {
      left[u] = 0;
      queue[tail++] = u;
    }
  for (let head = 0; head < tail; head++) {
    const u = queue[head];
    for (let e = start[u]; e < start[u + 1]; e++) {
      const v = to[e];
      if (right[v] === 1) continue;
      right[v] = 1;
      const partner = matchRight[v];
      if (left[partner] === 0) continue;
      // v enters the cover and its partner leaves it: the size stays that of the matching.
      left[partner] = 0;
      queue[tail++] = partner;
    }
  }
  let size = 0;
  for (let u = 0; u < nLeft; u++) size += left[u];
  for (let v = 0; v < nRight; v++) size += right[v];
  return { left, right, size };
}

/** Maximum matching by shortest augmenting paths in phases (Hopcroft and Karp 1973); -1 = unmatched. */
export function maximumMatching({ nLeft, nRight, start, to }: Bipartite): {
  readonly matchLeft: Int32Array;
  readonly matchRight: Int32Array;
} {
  const matchLeft = new Int32Array(nLeft).fill(-1);
  const matchRight = new Int32Array(nRight).fill(-1);
  const level = new Int32Array(nLeft);
  const queue = new Uint32Array(nLeft);
  const cursor = new Uint32Array(nLeft);
  const path = new Uint32Array(nLeft);

  for (let u = 0; u < nLeft; u++)
    for (let e = start[u]; e < start[u + 1]; e++)
      if (matchRight[to[e]] < 0) {
        matchLeft[u] = to[e];
        matchRight[to[e]] = u;
        break;
      }

  while (layer()) for (let u = 0; u < nLeft; u++) if (matchLeft[u] < 0) augment(u);
  return { matchLeft, matchRight };

  /** Breadth-first levels from the unmatched left vertices; true when some path ends in an unmatched right vertex. */
  function layer(): boolean {
    let tail = 0;
    for (let u = 0; u < nLeft; u++) {
      cursor[u] = start[u];
      level[u] = matchLeft[u] < 0 ? 0 : -1;
      if (level[u] === 0) queue[tail++] = u;
    }
    let found = false;
    for (let head = 0; head < tail; head++) {
      const u = queue[head];
      for (let e = start[u]; e < start[u + 1]; e++) {
        const next = matchRight[to[e]];
        if (next < 0) found = true;
        else if (level[next] < 0) {
          level[next] = level[u] + 1;
          queue[tail++] = next;
        }
      }
    }
    return found;
  }

  /** Depth-first along the levels, without recursion; flips the matching along the path it finds. */
  function augment(root: number): void {
    let depth = 0;
    path[0] = root;
    while (depth >= 0) {
      const u = path[depth];
      if (cursor[u] === start[u + 1]) {
        level[u] = -1;
        depth--;
        if (depth >= 0) cursor[path[depth]]++;
        continue;
      }
      const next = matchRight[to[cursor[u]]];
      if (next < 0) {
        for (let d = depth; d >= 0; d--) {
          const w = path[d];
          matchLeft[w] = to[cursor[w]];
          matchRight[matchLeft[w]] = w;
        }
        return;
      }
      if (level[next] === level[u] + 1) path[++depth] = next;
      else cursor[u]++;
    }
  }
}
