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
export function mapEntries({ n, start: rowOf, column }: BlockPattern, structure: Structure): EntryMap {
  const { position, first, supernodeOf, rowStart, row, pivotAt, belowAt } = structure;
  const nSupernodes = first.length - 1;
  const start = new Uint32Array(nSupernodes + 1);
  for (let i = 0; i < n; i++)
    for (let k = rowOf[i]; k < rowOf[i + 1]; k++) start[supernodeOf[Math.min(position[i], position[column[k]])] + 1]++;
  for (let s = 0; s < nSupernodes; s++) start[s + 1] += start[s];

  const block = new Int32Array(column.length);
  const target = new Uint32Array(column.length);
  const next = start.slice(0, nSupernodes);
  for (let i = 0; i < n; i++)
    for (let k = rowOf[i]; k < rowOf[i + 1]; k++) {
      const turned = position[i] < position[column[k]];
      const low = turned ? position[i] : position[column[k]];
      const slot = next[supernodeOf[low]]++;
      block[slot] = turned ? -1 - k : k;
      target[slot] = i;
    }

  const at = new Uint32Array(column.length);
  const stride = new Uint8Array(column.length);
  const place = new Uint32Array(n);
  for (let s = 0; s < nSupernodes; s++) {
    const width = first[s + 1] - first[s];
    const below = rowStart[s + 1] - rowStart[s];
    for (let k = 0; k < below; k++) place[row[rowStart[s] + k]] = k;
    for (let slot = start[s]; slot < start[s + 1]; slot++) {
      const k = block[slot] < 0 ? -1 - block[slot] : block[slot];
      const a = position[target[slot]];
      const b = position[column[k]];
      const high = Math.max(a, b);
      const step = high < first[s + 1] ? strideOf(width, high - first[s]) : strideOf(below, place[high]);
      const from =
        high < first[s + 1]
          ? pivotAt[s] + triangleRow(width, high - first[s])
          : belowAt[s] + rectangleRow(below, width, place[high]);
      at[slot] = from + (Math.min(a, b) - first[s]) * 3 * step;
      stride[slot] = step;
    }
  }
  return { start, block, at, stride };
}
