import { Fault } from '../fault/fault.ts';
import type { Point, Ring } from '../geometry/point.ts';
import { extent } from '../geometry/region.ts';

/** Wanted edge length at a point, mm. */
export type SizeField = (x: number, y: number) => number;

/** Wanted edge length at a point or along a ring, mm. */
export type SizeSource = { readonly at: Point; readonly size: number } | { readonly ring: Ring; readonly size: number };

/** Points finer than the base size by more than this are few and sharp: they are graded exactly, beside the grid. */
const EXACT = 8;

/** Cells of the background grid along the longer side of its extent, at most. */
const CELLS = 300;

/**
 * Graded edge length: `base` away from the sources, falling to theirs with a slope of at most about `growth`.
 *
 * Tabulated once on a grid of square cells and interpolated, so that evaluation costs the same for any number of
 * sources. The corners of every cell that a source touches get its size; from there the table grows by a two-pass
 * chamfer (Borgefors 1986), which measures distance to 8 %.
 *
 * @throws Fault OUT_OF_RANGE when a size or the growth is not positive and finite
 */
export function sizeField(options: {
  readonly base: number;
  readonly sources: readonly SizeSource[];
  readonly growth: number;
}): SizeField {
  const { base, growth } = options;
  for (const value of [base, growth, ...options.sources.map(({ size }) => size)])
    if (!(value > 0 && value < Infinity))
      throw new Fault(
        'OUT_OF_RANGE',
        `An element size or growth of ${value} is asked for; give a positive number.`,
        '',
        {
          value,
          expected: 'a positive, finite number',
          remedy: 'correct the element size',
        },
      );
  const sources = options.sources.filter(({ size }) => size < base);
  if (sources.length === 0) return () => base;
  const points = sources.flatMap((source) => ('at' in source && source.size < base / EXACT ? [source] : []));
  const table = tabulated(
    base,
    sources.filter((source) => !('at' in source && source.size < base / EXACT)),
    growth,
  );
  if (points.length === 0) return table;
  return (x, y) =>
    points.reduce(
      (size, { at, size: least }) => Math.min(size, least + growth * Math.hypot(x - at[0], y - at[1])),
      table(x, y),
    );
}

/** The size field of sources that its grid resolves. */
function tabulated(base: number, sources: readonly SizeSource[], growth: number): SizeField {
  if (sources.length === 0) return () => base;
  const least = sources.reduce((size, source) => Math.min(size, source.size), base);
  const { min, max } = extent(sources.map((source) => ('at' in source ? [source.at] : source.ring)));
  const reach = (base - least) / growth;
  const longer = Math.max(max[0] - min[0], max[1] - min[1]) + 2 * reach;
  const cell = Math.max(longer / CELLS, least);
  const [x0, y0] = [min[0] - reach - cell, min[1] - reach - cell];
  const columns = Math.ceil((max[0] + reach - x0) / cell) + 2;
  const rows = Math.ceil((max[1] + reach - y0) / cell) + 2;
  const table = new Float64Array(columns * rows).fill(base);

  const touch = (x: number, y: number, size: number) => {
    const at = Math.floor((y - y0) / cell) * columns + Math.floor((x - x0) / cell);
    for (const node of [at, at + 1, at + columns, at + columns + 1]) table[node] = Math.min(table[node], size);
  };
  for (const source of sources) {
    if ('at' in source) touch(source.at[0], source.at[1], source.size);
    else
      source.ring.forEach(([xa, ya], i) => {
        const [xb, yb] = source.ring[(i + 1) % source.ring.length];
        const steps = Math.ceil((2 * Math.hypot(xb - xa, yb - ya)) / cell);
        for (let k = 0; k < steps; k++) touch(xa + (k / steps) * (xb - xa), ya + (k / steps) * (yb - ya), source.size);
      });
  }
  spread(table, columns, rows, growth * cell);

  return (x, y) => {
    const u = (x - x0) / cell;
    const v = (y - y0) / cell;
    if (!(u >= 0 && v >= 0 && u < columns - 1 && v < rows - 1)) return base;
    const column = Math.floor(u);
    const row = Math.floor(v);
    const at = row * columns + column;
    const s = u - column;
    const t = v - row;
    return (
      (1 - t) * ((1 - s) * table[at] + s * table[at + 1]) +
      t * ((1 - s) * table[at + columns] + s * table[at + columns + 1])
    );
  };
}

/** Lowers every entry to what its neighbours allow: `step` more a cell along the grid, sqrt(2) `step` across. */
function spread(table: Float64Array, columns: number, rows: number, step: number): void {
  const diagonal = Math.SQRT2 * step;
  for (const way of [1, -1]) {
    for (let i = 0; i < rows; i++) {
      const row = (way > 0 ? i : rows - 1 - i) * columns;
      const before = i > 0 ? row - way * columns : -1;
      for (let j = 0; j < columns; j++) {
        const column = way > 0 ? j : columns - 1 - j;
        let value = table[row + column];
        if (j > 0) value = Math.min(value, table[row + column - way] + step);
        if (before >= 0) {
          value = Math.min(value, table[before + column] + step);
          if (column > 0) value = Math.min(value, table[before + column - 1] + diagonal);
          if (column < columns - 1) value = Math.min(value, table[before + column + 1] + diagonal);
        }
        table[row + column] = value;
      }
    }
  }
}
