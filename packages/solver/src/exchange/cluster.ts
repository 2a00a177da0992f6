import Delaunator from 'delaunator';

type XY = readonly [number, number];

/** Points grouped by the gaps between them. */
export interface Clusters {
  /** Group of each point, from 0. */
  readonly group: Int32Array;
  readonly count: number;
  /** Distance that parts groups, mm; `null` where all is one. */
  readonly gap: number | null;
  /** Distance at a clear jump that was not cut, mm, since it would leave a group of few points; `null` without one. */
  readonly passed: number | null;
}

/** A gap parts sites where it is this much wider than the widest within them. */
const CLEAR = 1.5;
/** Probes that a site has at least, where gaps alone tell sites apart. */
export const FEWEST = 4;

/**
 * Groups of points that hang together more closely than with each other: the shortest tree that joins all points
 * (Kruskal 1956, on the edges of their Delaunay triangulation, which contain it) is cut at the clearest jump of its
 * sorted edge lengths.
 *
 * @param gap parts points that are further apart; found if left out
 */
export function clusters(points: readonly XY[], gap?: number): Clusters {
  const tree = shortestTree(points);
  const clear = gap === undefined ? clearestGap(tree, points.length) : { cut: gap, passed: null };
  const { cut } = clear;
  const join = forest(points.length);
  for (const { a, b, length } of tree) if (cut === null || length <= cut) join.unite(a, b);
  const number = new Map<number, number>();
  const group = Int32Array.from(points, (_, i) => {
    const root = join.root(i);
    const known = number.get(root) ?? number.size;
    number.set(root, known);
    return known;
  });
  return { group, count: number.size, gap: number.size === 1 ? null : cut, passed: cut === null ? clear.passed : null };
}

interface Edge {
  readonly a: number;
  readonly b: number;
  readonly length: number;
}

/** The edges of the tree, shortest first. */
function shortestTree(points: readonly XY[]): Edge[] {
  const join = forest(points.length);
  return candidates(points)
    .map(([a, b]) => ({ a, b, length: Math.hypot(points[a][0] - points[b][0], points[a][1] - points[b][1]) }))
    .sort((p, q) => p.length - q.length)
    .filter(({ a, b }) => join.unite(a, b));
}

function candidates(points: readonly XY[]): [number, number][] {
  const { triangles, halfedges } = Delaunator.from(
    points as XY[],
    ([x]) => x,
    ([, y]) => y,
  );
  if (triangles.length === 0) {
    // All on one line: neighbours along it.
    const order = [...points.keys()].sort((i, j) => points[i][0] - points[j][0] || points[i][1] - points[j][1]);
    return order.slice(1).map((b, i) => [order[i], b]);
  }
  return Array.from(triangles, (a, e): [number, number] => [a, triangles[e % 3 === 2 ? e - 2 : e + 1]]).filter(
    ([a, b], e) => a < b || halfedges[e] < 0,
  );
}

/** Middle of the clearest jump that leaves no group with less than a few points. */
function clearestGap(
  tree: readonly Edge[],
  count: number,
): { readonly cut: number | null; readonly passed: number | null } {
  const jumps = tree
    .map(({ length }, i) => ({ i, low: length, high: tree[i + 1]?.length ?? 0 }))
    .filter(({ low, high }) => high > CLEAR * low)
    .sort((p, q) => q.high / q.low - p.high / p.low)
    .slice(0, 20);
  const good = jumps.find(({ i }) => {
    const join = forest(count);
    for (const { a, b } of tree.slice(0, i + 1)) join.unite(a, b);
    const size = new Map<number, number>();
    for (let p = 0; p < count; p++) size.set(join.root(p), (size.get(join.root(p)) ?? 0) + 1);
    return Math.min(...size.values()) >= FEWEST;
  });
  return { cut: good === undefined ? null : (good.low + good.high) / 2, passed: jumps[0]?.high ?? null };
}

/** Union of disjoint sets with halved paths. */
function forest(n: number) {
  const parent = Int32Array.from({ length: n }, (_, i) => i);
  const root = (i: number): number => {
    let at = i;
    while (parent[at] !== at) {
      parent[at] = parent[parent[at]];
      at = parent[at];
    }
    return at;
  };
  /** False where the two were one already. */
  const unite = (a: number, b: number): boolean => {
    const [p, q] = [root(a), root(b)];
    parent[p] = q;
    return p !== q;
  };
  return { root, unite };
}
