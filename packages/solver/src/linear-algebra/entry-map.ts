import type { BlockPattern } from './block-matrix.ts';
import { rectangleRow, strideOf, triangleRow } from './front-layout.ts';

/** Where the blocks of a matrix enter the fronts, grouped by supernode. */
export interface EntryMap {
  /** `[nSupernodes + 1]` into the lists below. */
  readonly start: Uint32Array;
  /** `[nBlocks]` block of the matrix; `-1 - block` when the elimination order turns it over the diagonal. */
  readonly block: Int32Array;
  /** `[nBlocks]` its address in the factor. */
  readonly at: Uint32Array;
  /** `[nBlocks]` distance between its columns there, 3 or 6. */
  readonly stride: Uint8Array;
}

/** The part of a symbolic factorisation that the map needs. */
interface Structure {
  readonly position: Uint32Array;
  readonly first: Uint32Array;
  readonly supernodeOf: Uint32Array;
  readonly rowStart: Uint32Array;
  readonly row: Uint32Array;
  readonly pivotAt: Uint32Array;
  readonly belowAt: Uint32Array;
}

/** Finds the place of every block of the matrix. */
export function mapEntries(pattern: BlockPattern, structure: Structure): EntryMap {
  const { start, block, low, high } = groupBySupernode(pattern, structure);
  const at = new Uint32Array(block.length);
  const stride = new Uint8Array(block.length);
  const place = new Uint32Array(pattern.n);
  for (let s = 0; s < start.length - 1; s++) placeEntries(structure, s, start, low, high, place, at, stride);
  return { start, block, at, stride };
}

/** Blocks by the supernode that eliminates them, with the lower and the higher of their two positions. */
function groupBySupernode({ n, start: rowOf, column }: BlockPattern, { position, first, supernodeOf }: Structure) {
  const start = new Uint32Array(first.length);
  const block = new Int32Array(column.length);
  const low = new Uint32Array(column.length);
  const high = new Uint32Array(column.length);
  for (let i = 0; i < n; i++)
    for (let k = rowOf[i]; k < rowOf[i + 1]; k++) start[supernodeOf[Math.min(position[i], position[column[k]])] + 1]++;
  for (let s = 1; s < start.length; s++) start[s] += start[s - 1];
  const next = start.slice();
  for (let i = 0; i < n; i++)
    for (let k = rowOf[i]; k < rowOf[i + 1]; k++) {
      const row = position[i];
      const across = position[column[k]];
      const slot = next[supernodeOf[Math.min(row, across)]]++;
      block[slot] = row < across ? -1 - k : k;
      low[slot] = Math.min(row, across);
      high[slot] = Math.max(row, across);
    }
  return { start, block, low, high };
}

/** @param place `[n]` room for the place of each row within the front */
function placeEntries(
  { first, rowStart, row, pivotAt, belowAt }: Structure,
  s: number,
  start: Uint32Array,
  low: Uint32Array,
  high: Uint32Array,
  place: Uint32Array,
  at: Uint32Array,
  stride: Uint8Array,
): void {
  const width = first[s + 1] - first[s];
  const below = rowStart[s + 1] - rowStart[s];
  for (let k = 0; k < below; k++) place[row[rowStart[s] + k]] = k;
  for (let slot = start[s]; slot < start[s + 1]; slot++) {
    const i = high[slot];
    const inPivot = i < first[s + 1];
    const step = inPivot ? strideOf(width, i - first[s]) : strideOf(below, place[i]);
    const from = inPivot
      ? pivotAt[s] + triangleRow(width, i - first[s])
      : belowAt[s] + rectangleRow(below, width, place[i]);
    at[slot] = from + (low[slot] - first[s]) * 3 * step;
    stride[slot] = step;
  }
}
