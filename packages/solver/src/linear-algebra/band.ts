import { type CuttingLine, MAX_BINS } from './cutting-line.ts';
import type { Drawing } from './drawing.ts';
import { AFTER, type Band, BEFORE, BETWEEN, bandFor } from './vertex-cut.ts';

/** Room for the bands of one graph. */
export interface BandWork {
  readonly band: Band;
  /** `[n]` number of a vertex within the band, or {@link OUTSIDE}. */
  readonly local: Int32Array;
  /** `[n]` vertices of the band. */
  readonly inside: Uint32Array;
  /** `[n]` {@link BEFORE} and {@link AFTER} the band; {@link BETWEEN} within. */
  readonly side: Uint8Array;
  /** `[MAX_BINS + 1]` first vertex of each interval within the band. */
  readonly first: Uint32Array;
}

const OUTSIDE = -1;

export function bandWork(n: number, nNeighbours: number): BandWork {
  return {
    band: bandFor(n, nNeighbours),
    local: new Int32Array(n),
    inside: new Uint32Array(n),
    side: new Uint8Array(n),
    first: new Uint32Array(MAX_BINS + 1),
  };
}

/**
 * The subgraph of a part within a line's band, its vertices numbered along the line's direction. Vertices before the
 * band that reach beyond it come in as well.
 *
 * @param bin `[4 * n]` interval of each vertex along each direction
 * @returns vertices before the band and within it
 */
export function takeBand(
  drawing: Drawing,
  vertices: Uint32Array,
  line: CuttingLine,
  bin: Uint8Array,
  work: BandWork,
): { readonly before: number; readonly count: number } {
  const before = markBand(drawing, vertices, line, bin, work);
  const count = numberBand(vertices, line, bin, work);
  linkBand(drawing, count, line, bin, work);
  return { before, count };
}

function markBand(drawing: Drawing, vertices: Uint32Array, line: CuttingLine, bin: Uint8Array, work: BandWork): number {
  const { direction, low, high, reach } = line;
  const { side, local, first } = work;
  let before = 0;
  first.fill(0);
  for (let i = 0; i < vertices.length; i++) {
    const v = vertices[i];
    const b = bin[4 * v + direction];
    local[v] = OUTSIDE;
    if (b > high) side[v] = AFTER;
    else if (b >= low || (b + reach > high && reachesBeyond(drawing, v, line, bin))) {
      side[v] = BETWEEN;
      first[b + 1]++;
    } else {
      side[v] = BEFORE;
      before++;
    }
  }
  return before;
}

function reachesBeyond({ start, neighbour, part }: Drawing, v: number, line: CuttingLine, bin: Uint8Array): boolean {
  for (let e = start[v]; e < start[v + 1]; e++) {
    const u = neighbour[e];
    if (part[u] === part[v] && bin[4 * u + line.direction] > line.high) return true;
  }
  return false;
}

function numberBand(vertices: Uint32Array, { direction }: CuttingLine, bin: Uint8Array, work: BandWork): number {
  const { side, local, inside, first } = work;
  for (let b = 0; b < MAX_BINS; b++) first[b + 1] += first[b];
  const count = first[MAX_BINS];
  for (let i = 0; i < vertices.length; i++) {
    const v = vertices[i];
    if (side[v] !== BETWEEN) continue;
    const k = first[bin[4 * v + direction]]++;
    local[v] = k;
    inside[k] = v;
  }
  return count;
}

function linkBand(drawing: Drawing, count: number, line: CuttingLine, bin: Uint8Array, work: BandWork): void {
  const { start, neighbour, part } = drawing;
  const { side, local, inside, band } = work;
  const to = band.neighbour;
  let end = 0;
  band.start[0] = 0;
  for (let k = 0; k < count; k++) {
    const v = inside[k];
    const mine = part[v];
    const begin = end;
    let entry = bin[4 * v + line.direction] < line.low ? 1 : 0;
    let exit = 0;
    for (let e = start[v]; e < start[v + 1]; e++) {
      const u = neighbour[e];
      if (part[u] !== mine) continue;
      const l = local[u];
      if (l !== OUTSIDE) {
        let at = end++;
        for (; at > begin && to[at - 1] < l; at--) to[at] = to[at - 1];
        to[at] = l;
      } else if (side[u] === BEFORE) entry = 1;
      else exit = 1;
    }
    band.start[k + 1] = end;
    band.entry[k] = entry;
    band.exit[k] = exit;
  }
}
