import type { BlockMatrix } from './block-matrix.ts';
import type { EntryMap } from './entry-map.ts';

/** Puts the blocks of the matrix into the fronts, which are still empty. */
export function enterBlocks(entries: EntryMap, matrix: BlockMatrix, value: Float64Array): void {
  const { block, at, stride } = entries;
  const from = matrix.value;
  for (let k = 0; k < block.length; k++) {
    const turned = block[k] < 0;
    const b = 9 * (turned ? -1 - block[k] : block[k]);
    // The front stores columns, the matrix rows: turning a block over the diagonal undoes the transposition.
    const down = turned ? 1 : 3;
    const across = turned ? 3 : 1;
    let to = at[k];
    value[to] = from[b];
    value[to + 1] = from[b + down];
    value[to + 2] = from[b + 2 * down];
    to += stride[k];
    value[to] = from[b + across];
    value[to + 1] = from[b + across + down];
    value[to + 2] = from[b + across + 2 * down];
    to += stride[k];
    value[to] = from[b + 2 * across];
    value[to + 1] = from[b + 2 * across + down];
    value[to + 2] = from[b + 2 * across + 2 * down];
  }
}
