import { F, rectangleRow, stride, triangleRow } from './layout';
import { factorRow, solve3, solve6, tile3, tile6 } from './tile';

/* One panel of a front at a time: two block rows, or the odd last one. */

/** `X <- X L^-T` for block columns `from .. upTo` of one panel; L is the triangle of `width` block rows at `pivot`. */
@inline
export function solvePanel(row: usize, s: usize, pair: bool, pivot: usize, width: u32, from: u32, upTo: u32): void {
  for (let j: u32 = from; j < upTo; j++) {
    const l = pivot + triangleRow(width, j);
    const sj = stride(width, j);
    const d = l + 3 * <usize>j * sj;
    const x = row + 3 * <usize>j * s;
    if (pair) {
      tile6(x, row, l, sj, j);
      solve6(x, d, sj);
    } else {
      tile3(x, s, row, s, l, sj, j);
      solve3(x, s, d, sj);
    }
  }
}

/** Factor of what a pivot panel from row i on holds on and right of its diagonal; first column not positive, or -1. */
@inline
export function factorPanel(row: usize, s: usize, pair: bool, i: u32): i32 {
  let failed = factorRow(row, s, i);
  if (failed >= 0) return 3 * i + failed;
  if (!pair) return -1;
  const next = row + 3 * F;
  const x = next + 3 * <usize>i * s;
  tile3(x, s, next, s, row, s, i);
  solve3(x, s, row + 3 * <usize>i * s, s);
  failed = factorRow(next, s, i + 1);
  return failed < 0 ? -1 : 3 * (i + 1) + failed;
}

/** `U <- U - B B^T` for the panel of U from block row i on; B is a rectangle of `rows` by `width` blocks. */
@inline
export function productPanel(below: usize, width: u32, rows: u32, update: usize, i: u32): void {
  const s = stride(rows, i);
  const a = below + rectangleRow(rows, width, i);
  const target = update + triangleRow(rows, i);
  const pair = (i | 1) < rows;
  // A whole panel reaches one block above the diagonal, into numbers that nobody reads.
  const last = pair ? i + 1 : i;
  for (let j: u32 = 0; j <= last; j++) {
    const b = below + rectangleRow(rows, width, j);
    const c = target + 3 * <usize>j * s;
    if (pair) tile6(c, a, b, stride(rows, j), width);
    else tile3(c, s, a, s, b, stride(rows, j), width);
  }
}
