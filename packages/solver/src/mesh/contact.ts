import { orientation } from '../geometry/orientation.ts';
import { segmentGrid } from './segment-grid.ts';
import { addVertex, joinDuplicates, splitSegments, type Web } from './web.ts';

/** Stops of segments by their place along it. */
type Stops = Map<number, { readonly along: number; readonly vertex: number }[]>;

/** Joins vertices that lie within their tolerance of each other; those of the outline do not move. */
export function mergeVertices(web: Web): boolean {
  const { x, y, fixed, tolerance, from, to, least } = web;
  const used = new Uint8Array(x.length);
  for (const v of [...from, ...to, ...web.points]) used[v] = 1;
  const order = Array.from(used.keys()).filter((v) => used[v] === 1);
  order.sort((a, b) => Number(fixed[b]) - Number(fixed[a]) || a - b);

  const reach = order.reduce((most, v) => Math.max(most, fixed[v] ? least : tolerance[v]), least);
  const place = (at: number) => Math.floor(at / reach);
  const key = (column: number, row: number) => column * 94906267 + row;
  const cells = new Map<number, number[]>();
  const became = Int32Array.from(x.keys());
  let merged = false;
  for (const v of order) {
    const [column, row] = [place(x[v] - web.min[0]), place(y[v] - web.min[1])];
    let nearest = -1;
    let least2 = Infinity;
    for (let i = -1; i <= 1; i++)
      for (let j = -1; j <= 1; j++)
        for (const w of cells.get(key(column + i, row + j)) ?? []) {
          const limit = fixed[v] ? least : fixed[w] ? tolerance[v] : Math.min(tolerance[v], tolerance[w]);
          const distance2 = (x[v] - x[w]) ** 2 + (y[v] - y[w]) ** 2;
          if (distance2 <= limit * limit && distance2 < least2) {
            nearest = w;
            least2 = distance2;
          }
        }
    if (nearest >= 0) {
      became[v] = nearest;
      merged = true;
      continue;
    }
    const cell = cells.get(key(column, row));
    if (cell === undefined) cells.set(key(column, row), [v]);
    else cell.push(v);
  }
  if (merged) {
    web.from = from.map((v) => became[v]);
    web.to = to.map((v) => became[v]);
    web.points = web.points.map((v) => became[v]);
  }
  joinDuplicates(web);
  return merged;
}

/**
 * Splits segments at vertices within tolerance of them.
 *
 * A segment of a region bends to the vertex; where the segment is of the outline, the vertex moves onto it and stays.
 */
export function splitAtVertices(web: Web): boolean {
  const { x, y, fixed, tolerance, from, to, outline, least } = web;
  const vertices = new Set([...from, ...to, ...web.points]);
  let reach = least;
  for (const v of vertices) if (!fixed[v]) reach = Math.max(reach, tolerance[v]);
  const grid = segmentGrid(web, reach);
  const ownTolerance = (s: number) => Math.min(tolerance[from[s]], tolerance[to[s]]);
  const limitOf = (v: number, s: number) => {
    if (fixed[v]) return outline[s] ? least : ownTolerance(s);
    return outline[s] ? tolerance[v] : Math.min(tolerance[v], ownTolerance(s));
  };
  const apart2 = (v: number, w: number) => (x[v] - x[w]) ** 2 + (y[v] - y[w]) ** 2;
  const stops: Stops = new Map();

  for (const v of vertices) {
    const near = grid.near(x[v], y[v]).filter((s) => {
      if (v === from[s] || v === to[s]) return false;
      const d2 = distance2(web, v, s);
      if (d2 <= least * least) return true;
      // Less than a quarter of the way to an end, or v and that end would take each other's place for ever.
      return d2 <= limitOf(v, s) ** 2 && 16 * d2 <= Math.min(apart2(v, from[s]), apart2(v, to[s]));
    });
    if (near.length === 0) continue;
    const held = near.filter((s) => outline[s]);
    if (!fixed[v] && held.length > 0) {
      const onto = held.reduce((best, s) => (distance2(web, v, s) < distance2(web, v, best) ? s : best));
      const t = along(web, v, onto);
      x[v] = x[from[onto]] + t * (x[to[onto]] - x[from[onto]]);
      y[v] = y[from[onto]] + t * (y[to[onto]] - y[from[onto]]);
      fixed[v] = true;
      stop(stops, onto, t, v);
      for (const s of near) if (!outline[s]) stop(stops, s, along(web, v, s), v);
    } else for (const s of near) stop(stops, s, along(web, v, s), v);
  }
  return split(web, stops);
}

/** Splits segments where they cross; a crossing with the outline lies on the outline. */
export function splitAtCrossings(web: Web): boolean {
  const { x, y, fixed, tolerance, from, to, outline } = web;
  const grid = segmentGrid(web, 0);
  const seen = new Int32Array(from.length).fill(-1);
  const stops: Stops = new Map();
  for (let s = 0; s < from.length; s++)
    for (const cell of grid.cellsOf(s))
      for (const r of cell) {
        if (r <= s || seen[r] === s) continue;
        seen[r] = s;
        const [a, b, c, d] = [from[s], to[s], from[r], to[r]];
        if (a === c || a === d || b === c || b === d) continue;
        const sideA = orientation(x[c], y[c], x[d], y[d], x[a], y[a]);
        const sideB = orientation(x[c], y[c], x[d], y[d], x[b], y[b]);
        if (!(sideA > 0 ? sideB < 0 : sideA < 0 && sideB > 0)) continue;
        const sideC = orientation(x[a], y[a], x[b], y[b], x[c], y[c]);
        const sideD = orientation(x[a], y[a], x[b], y[b], x[d], y[d]);
        if (!(sideC > 0 ? sideD < 0 : sideC < 0 && sideD > 0)) continue;
        const onS = sideA / (sideA - sideB);
        const onR = sideC / (sideC - sideD);
        const [u, v, t] = outline[r] && !outline[s] ? [c, d, onR] : [a, b, onS];
        const free = Math.min(...[a, b, c, d].filter((w) => !fixed[w]).map((w) => tolerance[w]), Infinity);
        const crossing = addVertex(
          web,
          x[u] + t * (x[v] - x[u]),
          y[u] + t * (y[v] - y[u]),
          outline[s] || outline[r],
          free < Infinity ? free : web.least,
        );
        stop(stops, s, onS, crossing);
        stop(stops, r, onR, crossing);
      }
  return split(web, stops);
}

function split(web: Web, stops: Stops): boolean {
  const chains = new Map<number, readonly number[]>();
  for (const [s, list] of stops)
    chains.set(
      s,
      list.sort((p, q) => p.along - q.along || p.vertex - q.vertex).map(({ vertex }) => vertex),
    );
  if (chains.size > 0) splitSegments(web, chains);
  return chains.size > 0;
}

function stop(stops: Stops, segment: number, at: number, vertex: number): void {
  const list = stops.get(segment);
  if (list === undefined) stops.set(segment, [{ along: at, vertex }]);
  else list.push({ along: at, vertex });
}

/** Place along segment s that is nearest to vertex v, 0 to 1. */
function along({ x, y, from, to }: Web, v: number, s: number): number {
  const [a, b] = [from[s], to[s]];
  const [dx, dy] = [x[b] - x[a], y[b] - y[a]];
  const t = ((x[v] - x[a]) * dx + (y[v] - y[a]) * dy) / (dx * dx + dy * dy);
  return Math.min(1, Math.max(0, t));
}

function distance2(web: Web, v: number, s: number): number {
  const { x, y, from, to } = web;
  const t = along(web, v, s);
  const [a, b] = [from[s], to[s]];
  return (x[v] - x[a] - t * (x[b] - x[a])) ** 2 + (y[v] - y[a] - t * (y[b] - y[a])) ** 2;
}
