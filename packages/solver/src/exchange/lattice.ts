type XY = readonly [number, number];

/** Regular array that points stand in, turned by no angle. */
export interface Lattice {
  readonly pattern: 'square' | 'rectangular' | 'triangular';
  /** Columns and rows; of a triangular one the rows and the points of the longest. */
  readonly columns: number;
  readonly rows: number;
  /** Point to point along x and row to row along y, mm. */
  readonly pitch: XY;
}

/** Coordinates this near, mm, are one line: lists are rounded to micrometres. */
const SAME_LINE = 2e-3;

/** Distinct values, near ones joined, ascending. */
export function linesOf(values: readonly number[], near = SAME_LINE): number[] {
  const sorted = [...values].sort((a, b) => a - b);
  const lines: number[][] = [];
  for (const value of sorted) {
    const last = lines[lines.length - 1];
    if (last !== undefined && value - last[last.length - 1] <= near) last.push(value);
    else lines.push([value]);
  }
  return lines.map((line) => (line[0] + line[line.length - 1]) / 2);
}

/** Spacing of lines that are evenly spaced; 0 for one line, `null` where they are uneven. */
export function evenSpacing(lines: readonly number[], near = SAME_LINE): number | null {
  if (lines.length < 2) return 0;
  const spacing = (lines[lines.length - 1] - lines[0]) / (lines.length - 1);
  return lines.every((line, i) => Math.abs(line - lines[0] - i * spacing) <= near) ? spacing : null;
}

/** The lattice that the points fill without a gap, or `null`. */
export function latticeOf(points: readonly XY[]): Lattice | null {
  const ys = linesOf(points.map(([, y]) => y));
  const dy = evenSpacing(ys);
  if (dy === null) return null;
  const xs = linesOf(points.map(([x]) => x));
  const dx = evenSpacing(xs);
  if (dx !== null && xs.length * ys.length === points.length) {
    const square = Math.abs(dx - dy) <= SAME_LINE || dx === 0 || dy === 0;
    const pitch: XY = [dx === 0 ? dy : dx, dy === 0 ? dx : dy];
    return pitch[0] === 0
      ? null
      : { pattern: square ? 'square' : 'rectangular', columns: xs.length, rows: ys.length, pitch };
  }
  return staggered(points, ys, dy);
}

/** Rows of one spacing, every other one shifted by half of it. */
function staggered(points: readonly XY[], ys: readonly number[], dy: number): Lattice | null {
  if (ys.length < 2) return null;
  const rows = ys.map((y) => points.filter((point) => Math.abs(point[1] - y) <= SAME_LINE).map(([x]) => x));
  const spacings = rows.map((row) => evenSpacing(linesOf(row)));
  const dx = spacings.find((spacing) => spacing !== null && spacing > 0);
  if (dx === undefined || dx === null || Math.abs(dy / dx - Math.sqrt(3) / 2) > 0.01) return null;
  const start = Math.min(...rows[0]);
  const fits = rows.every((row, i) => {
    if (spacings[i] === null || (row.length > 1 && Math.abs(spacings[i] - dx) > SAME_LINE)) return false;
    const shift = (Math.min(...row) - start) / dx - (i % 2) / 2;
    return Math.abs(shift - Math.round(shift)) * dx <= SAME_LINE;
  });
  const columns = Math.max(...rows.map((row) => row.length));
  return fits ? { pattern: 'triangular', columns, rows: ys.length, pitch: [dx, dy] } : null;
}
