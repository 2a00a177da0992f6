import type { Web } from './web.ts';

/** Uniform grid of cells over the plate; what lies outside counts to the outermost cells. */
export interface SegmentGrid {
  /** Segments that pass a cell within the margin. */
  readonly near: (x: number, y: number) => readonly number[];
  /** Cells that a segment passes within the margin. */
  readonly cellsOf: (segment: number) => readonly (readonly number[])[];
}

/** Grid of about two cells a segment. */
export function segmentGrid(web: Web, margin: number): SegmentGrid {
  const { min, max, x, y, from, to } = web;
  const [width, height] = [max[0] - min[0], max[1] - min[1]];
  const cell = Math.max(
    Math.sqrt((width * height) / (2 * from.length + 1)),
    Math.max(width, height) / 4000,
    2 * margin,
  );
  const columns = Math.ceil(width / cell) + 1;
  const rows = Math.ceil(height / cell) + 1;
  const columnOf = (at: number) => Math.min(columns - 1, Math.max(0, Math.floor((at - min[0]) / cell)));
  const rowOf = (at: number) => Math.min(rows - 1, Math.max(0, Math.floor((at - min[1]) / cell)));
  const cells: number[][] = Array.from({ length: columns * rows }, () => []);

  const cellsOf = (s: number): number[][] => {
    const [a, b] = y[from[s]] < y[to[s]] ? [from[s], to[s]] : [to[s], from[s]];
    const [first, last] = [rowOf(y[a] - margin), rowOf(y[b] + margin)];
    const slope = y[b] > y[a] ? (x[b] - x[a]) / (y[b] - y[a]) : 0;
    const passed: number[][] = [];
    for (let row = first; row <= last; row++) {
      // x range of the part of the segment between the lines of the row; the outermost rows reach to infinity.
      const low = row === 0 ? y[a] : Math.max(y[a], min[1] + row * cell - margin);
      const high = row === rows - 1 ? y[b] : Math.min(y[b], min[1] + (row + 1) * cell + margin);
      const ends = slope === 0 ? [x[a], x[b]] : [x[a] + (low - y[a]) * slope, x[a] + (high - y[a]) * slope];
      const reach = margin + 1e-9 * cell;
      const start = columnOf(Math.max(Math.min(ends[0], ends[1]), Math.min(x[a], x[b])) - reach);
      const end = columnOf(Math.min(Math.max(ends[0], ends[1]), Math.max(x[a], x[b])) + reach);
      for (let column = start; column <= end; column++) passed.push(cells[row * columns + column]);
    }
    return passed;
  };
  for (let s = 0; s < from.length; s++) for (const passed of cellsOf(s)) passed.push(s);
  return { near: (px, py) => cells[rowOf(py) * columns + columnOf(px)], cellsOf };
}
