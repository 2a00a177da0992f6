import { Fault } from '../fault/fault.ts';
import type { Point } from '../geometry/point.ts';

/** Sites as they repeat on the grid of dies. */
export interface DiePattern {
  readonly columns: number;
  readonly rows: number;
  /** Extent of a die along x and y, mm. */
  readonly die: Point;
  /** Dies left out between sites along x and y. */
  readonly skip: Point;
}

/** A round wafer. */
export interface Wafer {
  readonly diameter: number;
  /** Edge exclusion, mm. */
  readonly edge: number;
  /** What lies at the centre: the middle of a die, or a corner of dies; die if left out. */
  readonly centre?: 'die' | 'corner' | undefined;
}

/** Touched sites of one touchdown: for each row, from the far (+y) side, its first and last touched column, or null. */
export type TouchedRows = readonly (readonly [first: number, last: number] | null)[];

/** Part of a die by which it may stick out and still count as inside: rounding. */
const ROUNDING = 1e-9;
/** Most dies across the wafer. */
const ACROSS = 4000;

/**
 * The distinct sets of sites that can be touched when the pattern steps over a wafer by whole dies, fullest first.
 *
 * A die is tested when all of it lies inside the radius less the edge exclusion. Every offset of the pattern on the die
 * grid that touches a die counts, since the stepping of the prober is not known; mirror images are sets of their own.
 *
 * The tested dies of a row are a run, symmetric about the centre, and so are the touched columns of a row of sites. Along
 * a row of offsets the set changes only where a column enters or leaves such a run, so only those offsets are looked at.
 *
 * @param most sets
 * @throws Fault OUT_OF_RANGE when the wafer holds no whole die; TOO_LARGE beyond `most` sets; with `path`
 */
export function touchdownSets(pattern: DiePattern, wafer: Wafer, most: number, path: string): TouchedRows[] {
  const { columns, rows, skip } = pattern;
  const [stepX, stepY] = [skip[0] + 1, skip[1] + 1];
  const { first, runs } = testedRuns(pattern.die, wafer, path);
  const found = new Map<string, TouchedRows>();
  for (let top = first; top < first + runs.length + (rows - 1) * stepY; top++) {
    const lines = Array.from({ length: rows }, (_, row) => runs[top - row * stepY - first] ?? null);
    for (const left of offsetsOfChange(lines, columns, stepX)) {
      const touched = lines.map((run) => run && columnsIn(run, left, stepX, columns));
      if (touched.every((run) => run === null)) continue;
      found.set(touched.join(';'), touched);
      if (found.size > most) throw tooMany(most, path);
    }
  }
  return [...found]
    .sort(([a, one], [b, other]) => countOf(other) - countOf(one) || (a < b ? -1 : 1))
    .map(([, touched]) => touched);
}

/** Number of sites touched. */
export function countOf(touched: TouchedRows): number {
  return touched.reduce((sum, run) => sum + (run === null ? 0 : run[1] - run[0] + 1), 0);
}

/** First and last tested die of each row of dies, from row `first` (-y) on; dies are numbered from the centre. */
export function testedRuns([width, height]: Point, { diameter, edge, centre }: Wafer, path: string) {
  const radius = diameter / 2 - edge;
  const half = centre === 'corner' ? 0.5 : 0;
  if (diameter > ACROSS * Math.min(width, height))
    throw new Fault(
      'TOO_LARGE',
      `A wafer of ${diameter} mm holds more than ${ACROSS} dies of ${width} x ${height} mm across at ${path}. Check sites.die.`,
      path,
      { value: [width, height], expected: `at least ${diameter / ACROSS} mm` },
    );
  // Die i of a row at height y is inside while |i + half| width + width/2 <= sqrt(radius^2 - (|y| + height/2)^2).
  const reach = (room: number, side: number): number => Math.floor(room / side - 0.5 - half + ROUNDING) + 2 * half;
  const run = (far: number): readonly [number, number] | null => {
    const room2 = radius * radius * (1 + ROUNDING) - far * far;
    const last = room2 < 0 ? -1 : reach(Math.sqrt(room2), width) - 2 * half;
    return last < 0 ? null : [-last - 2 * half, last];
  };
  const last = radius > 0 ? reach(radius, height) - 2 * half : -1;
  const first = -last - 2 * half;
  const runs = Array.from({ length: Math.max(0, last - first + 1) }, (_, i) =>
    run((Math.abs(first + i + half) + 0.5) * height),
  );
  if (runs.every((run) => run === null))
    throw new Fault(
      'OUT_OF_RANGE',
      `A wafer of ${diameter} mm with an edge exclusion of ${edge} mm holds no whole die of ${width} x ${height} mm at ${path}. Enlarge the diameter, or lower the edge exclusion.`,
      path,
      { value: { diameter, edge }, expected: 'room for a die' },
    );
  return { first, runs };
}

/** Offsets along x, ascending, at which a column enters or leaves a run. */
function offsetsOfChange(runs: readonly (readonly [number, number] | null)[], columns: number, step: number): number[] {
  const offsets = new Set<number>();
  for (const run of runs)
    if (run !== null)
      for (let column = 0; column < columns; column++)
        offsets.add(run[0] - column * step).add(run[1] - column * step + 1);
  return [...offsets].sort((a, b) => a - b);
}

/** First and last column with a die in the run, when column 0 stands on die `left`. */
function columnsIn([from, to]: readonly [number, number], left: number, step: number, columns: number) {
  const first = Math.max(0, Math.ceil((from - left) / step));
  const last = Math.min(columns - 1, Math.floor((to - left) / step));
  return first > last ? null : ([first, last] as const);
}

function tooMany(most: number, path: string): Fault {
  return new Fault(
    'TOO_LARGE',
    `More than ${most} different sets of sites are touched over the wafer at ${path}, too many to solve. Name the sets that matter in "touched" instead, such as ["A1", "A2"].`,
    path,
    { expected: `at most ${most}` },
  );
}
