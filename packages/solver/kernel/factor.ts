import { F, rectangleRow, stride, triangleRow } from './layout';
import { factorRow, solve3, solve6, tile3, tile6 } from './tile';

/** `X <- X L^-T` for the first `upTo` block columns of one panel; L is the triangle of `width` block rows at `pivot`. */
@inline
function solvePanel(row: usize, s: usize, pair: bool, pivot: usize, width: u32, upTo: u32): void {
  for (let j: u32 = 0; j < upTo; j++) {
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

/** `L L^T` of the triangle of `width` block rows at `pivot`, in place; first scalar column that is not positive, or -1. */
export function factorPivot(pivot: usize, width: u32): i32 {
  for (let i: u32 = 0; i < width; i += 2) {
    const s = stride(width, i);
    const row = pivot + triangleRow(width, i);
    const pair = (i | 1) < width;
    solvePanel(row, s, pair, pivot, width, i);
    let failed = factorRow(row, s, i);
    if (failed >= 0) return 3 * i + failed;
    if (!pair) continue;
    const next = row + 3 * F;
    const x = next + 3 * <usize>i * s;
    tile3(x, s, next, s, row, s, i);
    solve3(x, s, row + 3 * <usize>i * s, s);
    failed = factorRow(next, s, i + 1);
    if (failed >= 0) return 3 * (i + 1) + failed;
  }
  return -1;
}

/** `B <- B L^-T` for the rectangle of `rows` by `width` blocks at `below`. */
export function solveBelow(pivot: usize, width: u32, below: usize, rows: u32): void {
  for (let i: u32 = 0; i < rows; i += 2)
    solvePanel(below + rectangleRow(rows, width, i), stride(rows, i), (i | 1) < rows, pivot, width, width);
}

/** `U <- U - B B^T` for the triangle of `rows` block rows at `update`. */
export function subtractProduct(below: usize, width: u32, rows: u32, update: usize): void {
  for (let i: u32 = 0; i < rows; i += 2) {
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
}
