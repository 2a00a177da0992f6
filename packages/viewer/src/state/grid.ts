import type { Point } from '@flathead/solver';

/** Grids that a drag can keep to, mm; 0 = none. */
export const GRIDS = [0, 0.1, 0.5, 1] as const;

/** Coordinates written by a drag are whole micrometres at least. */
const FINEST = 0.001;

/** The nearest value of a grid, mm, written with no more digits than it has. */
export function onGrid(value: number, grid: number): number {
  const step = Math.max(grid, FINEST);
  return Number((Math.round(value / step) * step).toFixed(3)) + 0;
}

export function pointOnGrid([x, y]: Point, grid: number): [number, number] {
  return [onGrid(x, grid), onGrid(y, grid)];
}
