import type { Point } from '../geometry/point.ts';
import { type DiePattern, testedRuns, type Wafer } from './touchdowns.ts';

/** Touchdowns that test every die of a wafer once. */
export interface SteppingPlan {
  /** Die under the first site (row A, column 1) of each touchdown, as column and row from the centre of the wafer. */
  readonly touchdowns: readonly Point[];
  /** Dies tested. */
  readonly dies: number;
  /** Sites that touched no tested die, over all touchdowns. */
  readonly lost: number;
  /** Fewer touchdowns than this can't do. */
  readonly least: number;
}

/** First and last tested die of a line of dies. */
type Run = readonly [first: number, last: number];

/** Lines of dies side by side that a pattern covers together, and where it goes along them. */
interface Band {
  /** First line, in the order of the pattern. */
  readonly start: number;
  /** Die of the pattern's first site along the line, for each touchdown. */
  readonly places: readonly number[];
}

/**
 * A plan that steps over a round wafer and tests every die once, and only whole dies inside the edge exclusion.
 *
 * With `s` dies skipped the pattern is stepped by one die `s` times, so that its sites interleave, before it moves on by its
 * own length. The wafer is cut into bands as wide as the pattern, of rows and of columns, at the offset that takes fewest
 * touchdowns; in each band the pattern starts at the first die. It is a plan, not the prober's, and the least for patterns
 * of a single row or column; for others `least` says how far it may be from it: dies of every r-th line, r the lines of the
 * pattern, share no touchdown, and a line of n takes n over the sites along it.
 *
 * @throws Fault as {@link testedRuns}
 */
export function steppingPlan(pattern: DiePattern, wafer: Wafer, path: string): SteppingPlan {
  const rowwise = alongLines(pattern, wafer, path);
  const turned: DiePattern = {
    columns: pattern.rows,
    rows: pattern.columns,
    die: [pattern.die[1], pattern.die[0]],
    skip: [pattern.skip[1], pattern.skip[0]],
  };
  const columnwise = alongLines(turned, wafer, path);
  const sites = pattern.columns * pattern.rows;
  const { dies } = rowwise;
  const touchdowns =
    columnwise.touchdowns.length < rowwise.touchdowns.length
      ? columnwise.touchdowns.map(([line, place]): Point => [line, place + (pattern.rows - 1) * (pattern.skip[1] + 1)])
      : rowwise.touchdowns.map(([line, place]): Point => [place, line + (pattern.rows - 1) * (pattern.skip[1] + 1)]);
  return {
    touchdowns,
    dies,
    lost: touchdowns.length * sites - dies,
    least: Math.max(rowwise.least, columnwise.least),
  };
}

/** Bands along the rows of the wafer; touchdowns as the lowest line and the first place along it that the pattern covers. */
function alongLines({ columns, rows, die, skip }: DiePattern, wafer: Wafer, path: string) {
  const { first, runs } = testedRuns(die, wafer, path);
  const [stepX, stepY] = [skip[0] + 1, skip[1] + 1];
  const touchdowns: Point[] = [];
  let least = 0;
  for (let line = 0; line < stepY; line++) {
    // Lines that the pattern can cover together: every stepY-th.
    const family = runs.map((run, i) => ({ run, i })).filter(({ i }) => i % stepY === line);
    const bands = bestBands(
      family.map(({ run }) => run),
      rows,
      columns,
      stepX,
    );
    for (const { start, places } of bands)
      for (const place of places) touchdowns.push([first + line + start * stepY, place]);
    least += leastOf(
      family.map(({ run }) => run),
      rows,
      columns,
      stepX,
    );
  }
  const dies = runs.reduce((sum, run) => sum + (run === null ? 0 : run[1] - run[0] + 1), 0);
  return { touchdowns, dies, least };
}

function bestBands(lines: readonly (Run | null)[], height: number, columns: number, step: number): Band[] {
  const tilings = Array.from({ length: height }, (_, offset) => {
    const bands: Band[] = [];
    for (let start = -offset; start < lines.length; start += height) {
      const covered = lines.slice(Math.max(0, start), start + height);
      const places = placesAlong(widest(covered), columns, step);
      if (places.length > 0) bands.push({ start, places });
    }
    return bands;
  });
  const count = (bands: readonly Band[]): number => bands.reduce((sum, { places }) => sum + places.length, 0);
  return tilings.reduce((best, bands) => (count(bands) < count(best) ? bands : best));
}

/** Runs lie within each other, being symmetric about the centre: the widest holds all of them. */
function widest(runs: readonly (Run | null)[]): Run | null {
  return runs.reduce((a, b) => (a === null || (b !== null && b[1] - b[0] > a[1] - a[0]) ? b : a), null);
}

/** Dies under the first site so that every die of a run is touched once: the pattern interleaved, then on by its length. */
function placesAlong(run: Run | null, columns: number, step: number): number[] {
  if (run === null) return [];
  const places: number[] = [];
  for (let shift = 0; shift < step; shift++)
    for (let place = run[0] + shift; place <= run[1]; place += columns * step) places.push(place);
  return places;
}

/** Touchdowns that dies of every `height`-th line take, at the offset that takes most. */
function leastOf(lines: readonly (Run | null)[], height: number, columns: number, step: number): number {
  const needed = new Array<number>(height).fill(0);
  lines.forEach((run, i) => {
    needed[i % height] += placesAlong(run, columns, step).length;
  });
  return Math.max(...needed);
}
