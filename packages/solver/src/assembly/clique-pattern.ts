import type { BlockPattern } from '../linear-algebra/block-matrix.ts';
import { sortedBy } from './counting-sort.ts';

/** Block pattern of elements of `size` block rows each, with the place of every element's blocks in it. */
export interface CliquePattern extends BlockPattern {
  /** `[size (size + 1) / 2 * nElements]` block of the pair p >= q of an element's rows, at `p (p + 1) / 2 + q`. */
  readonly block: Uint32Array;
}

/**
 * Pattern of a stiffness whose elements couple all of their rows; like `blockPattern`, which does the same for three.
 *
 * @param n number of block rows
 * @param rows `[size * nElements]` block rows of the elements, no row twice in one
 */
export function cliquePattern(n: number, rows: Uint32Array, size: number): CliquePattern {
  const nElements = rows.length / size;
  const pairs = (size * (size + 1)) / 2;
  const larger = new Uint32Array(pairs * nElements);
  const smaller = new Uint32Array(larger.length);
  for (let e = 0, k = 0; e < nElements; e++)
    for (let p = 0; p < size; p++)
      for (let q = 0; q <= p; q++, k++) {
        const i = rows[size * e + p];
        const j = rows[size * e + q];
        larger[k] = Math.max(i, j);
        smaller[k] = Math.min(i, j);
      }
  const inOrder = Uint32Array.from({ length: larger.length }, (_, k) => k);
  const sorted = sortedBy(larger, sortedBy(smaller, inOrder, n), n);
  const start = new Uint32Array(n + 1);
  const column = new Uint32Array(larger.length);
  const block = new Uint32Array(larger.length);
  let blocks = 0;
  for (let row = 0, k = 0; row < n; row++) {
    start[row] = blocks;
    for (; k < sorted.length && larger[sorted[k]] === row; k++) {
      if (blocks === start[row] || column[blocks - 1] !== smaller[sorted[k]]) column[blocks++] = smaller[sorted[k]];
      block[sorted[k]] = blocks - 1;
    }
  }
  start[n] = blocks;
  return { n, start, column: column.slice(0, blocks), block };
}
