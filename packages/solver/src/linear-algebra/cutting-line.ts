import { DIRECTIONS, type Drawing } from './drawing.ts';

/** Most intervals into which a part is divided along a direction. */
export const MAX_BINS = 256;
const MIN_BINS = 32;

/** Least share of the vertices on either side of a line. */
const LEAST_SHARE = 0.35;
/** A line that halves unevenly costs `1 + this * ((before - after) / n)^2` times its edges. */
const IMBALANCE_COST = 1.5;
/** Share of the vertices that the band takes in on either side of its line, */
const BAND = 0.15;
/** and at most about so many layers of them: more makes the separators of a mesh no smaller. */
const LAYERS = 4;

/** A straight line across a part and a band around it, by intervals along one direction. */
export interface CuttingLine {
  readonly direction: number;
  /** First and last interval of the band. There are vertices below and above it. */
  readonly low: number;
  readonly high: number;
  /** Intervals that an edge spans, at most. */
  readonly reach: number;
  /** Edges cut, counted more if the line halves unevenly. */
  readonly cost: number;
}

/** Where the vertices of a part lie along each direction. */
export interface Intervals {
  /** `[4 * n]` interval of a vertex along each direction, defined for the part's vertices. */
  readonly bin: Uint8Array;
  /** `[4 * MAX_BINS]` vertices in each interval. */
  readonly count: Uint32Array;
  /** `[4 * MAX_BINS]` edges that begin in each interval less those that end there. */
  readonly crossing: Int32Array;
  /** `[8]` least and greatest coordinate along each direction. */
  readonly range: Float64Array;
  /** `[4]` intervals per unit of length. */
  readonly scale: Float64Array;
}

/** Room for the intervals of any part of a graph of n vertices. */
export function intervalsFor(n: number): Intervals {
  return {
    bin: new Uint8Array(DIRECTIONS * n),
    count: new Uint32Array(DIRECTIONS * MAX_BINS),
    crossing: new Int32Array(DIRECTIONS * MAX_BINS),
    range: new Float64Array(2 * DIRECTIONS),
    scale: new Float64Array(DIRECTIONS),
  };
}

/** The line that cuts the fewest edges along each direction in which a line parts the vertices at all, best first. */
export function cuttingLines(drawing: Drawing, vertices: Uint32Array, work: Intervals): CuttingLine[] {
  const bins = Math.min(MAX_BINS, Math.max(MIN_BINS, vertices.length >>> 2));
  findRange(drawing, vertices, work.range);
  fillBins(drawing, vertices, bins, work);
  countCrossings(drawing, vertices, work);
  const lines: CuttingLine[] = [];
  for (let d = 0; d < DIRECTIONS; d++) {
    const line = bestLine(work, d, bins, vertices.length, Math.ceil(drawing.longest[d] * work.scale[d]));
    if (line !== null) lines.push(line);
  }
  return lines.sort((a, b) => a.cost - b.cost);
}

function findRange({ x, y }: Drawing, vertices: Uint32Array, range: Float64Array): void {
  for (let d = 0; d < DIRECTIONS; d++) {
    range[2 * d] = Infinity;
    range[2 * d + 1] = -Infinity;
  }
  for (let i = 0; i < vertices.length; i++) {
    const px = x[vertices[i]];
    const py = y[vertices[i]];
    const sum = px + py;
    const difference = px - py;
    if (px < range[0]) range[0] = px;
    if (px > range[1]) range[1] = px;
    if (py < range[2]) range[2] = py;
    if (py > range[3]) range[3] = py;
    if (sum < range[4]) range[4] = sum;
    if (sum > range[5]) range[5] = sum;
    if (difference < range[6]) range[6] = difference;
    if (difference > range[7]) range[7] = difference;
  }
}

function fillBins({ x, y }: Drawing, vertices: Uint32Array, bins: number, work: Intervals): void {
  const { bin, count, range, scale } = work;
  for (let d = 0; d < DIRECTIONS; d++) {
    const extent = range[2 * d + 1] - range[2 * d];
    // A trifle less than the number of bins, so that the last vertex falls into the last one.
    scale[d] = extent > 0 ? (bins * (1 - 1e-12)) / extent : 0;
  }
  count.fill(0);
  for (let i = 0; i < vertices.length; i++) {
    const v = vertices[i];
    const bx = Math.floor((x[v] - range[0]) * scale[0]);
    const by = Math.floor((y[v] - range[2]) * scale[1]);
    const bSum = Math.floor((x[v] + y[v] - range[4]) * scale[2]);
    const bDifference = Math.floor((x[v] - y[v] - range[6]) * scale[3]);
    bin[4 * v] = bx;
    bin[4 * v + 1] = by;
    bin[4 * v + 2] = bSum;
    bin[4 * v + 3] = bDifference;
    count[bx]++;
    count[MAX_BINS + by]++;
    count[2 * MAX_BINS + bSum]++;
    count[3 * MAX_BINS + bDifference]++;
  }
}

/** Counts each edge from its higher end. */
function countCrossings(drawing: Drawing, vertices: Uint32Array, { bin, crossing }: Intervals): void {
  const { start, neighbour, part } = drawing;
  const mine = part[vertices[0]];
  crossing.fill(0);
  for (let i = 0; i < vertices.length; i++) {
    const v = vertices[i];
    for (let e = start[v]; e < start[v + 1]; e++) {
      const u = neighbour[e];
      if (u > v || part[u] !== mine) continue;
      for (let d = 0; d < DIRECTIONS; d++) {
        const p = bin[4 * v + d];
        const q = bin[4 * u + d];
        crossing[d * MAX_BINS + Math.min(p, q)]++;
        crossing[d * MAX_BINS + Math.max(p, q)]--;
      }
    }
  }
}

function bestLine(work: Intervals, direction: number, bins: number, n: number, reach: number): CuttingLine | null {
  const { count, crossing } = work;
  const at = direction * MAX_BINS;
  let before = 0;
  let cut = 0;
  let cost = Infinity;
  let share = 0;
  for (let b = 0; b < bins - 1; b++) {
    before += count[at + b];
    cut += crossing[at + b];
    const trial = before / n;
    if (trial < LEAST_SHARE || trial > 1 - LEAST_SHARE) continue;
    const trialCost = (cut + 0.5) * (1 + IMBALANCE_COST * (2 * trial - 1) ** 2);
    if (trialCost >= cost) continue;
    cost = trialCost;
    share = trial;
  }
  if (cost === Infinity) return null;
  let low = 0;
  const band = Math.min(BAND, LAYERS / Math.sqrt(n));
  for (let below = count[at]; below < (share - band) * n || below === 0; ) below += count[at + ++low];
  let high = bins - 1;
  for (let above = count[at + high]; above < (1 - share - band) * n || above === 0; ) above += count[at + --high];
  return { direction, low: low + 1, high: high - 1, reach, cost };
}
