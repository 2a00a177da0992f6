import { rectangleRow, strideOf, triangleRow } from './front-layout.ts';
import type { Symbolic } from './symbolic.ts';

/**
 * Adds the update triangle of a supernode to its parent's front, block by block.
 *
 * @param source address of that triangle
 * @param update address of the parent's own
 */
export function extendAdd(
  symbolic: Symbolic,
  child: number,
  value: Float64Array,
  source: number,
  update: number,
): void {
  const { first, parent, rowStart, relative, pivotAt, belowAt } = symbolic;
  const p = parent[child];
  const from = rowStart[child];
  const count = rowStart[child + 1] - from;
  const width = first[p + 1] - first[p];
  const below = rowStart[p + 1] - rowStart[p];
  // The first rows of the child, and so the first columns, are pivots of the parent.
  let pivots = 0;
  while (pivots < count && relative[from + pivots] < width) pivots++;
  for (let i = 0; i < count; i++) {
    const u = source + triangleRow(count, i);
    const us = strideOf(count, i);
    const row = relative[from + i];
    if (i < pivots) {
      const target = pivotAt[p] + triangleRow(width, row);
      addBlocks(value, u, us, relative, from, from + i + 1, target, strideOf(width, row));
      continue;
    }
    const s = strideOf(below, row - width);
    const left = belowAt[p] + rectangleRow(below, width, row - width);
    const right = update + triangleRow(below, row - width) - 3 * width * s;
    addBlocks(value, u, us, relative, from, from + pivots, left, s);
    addBlocks(value, u + 3 * pivots * us, us, relative, from + pivots, from + i + 1, right, s);
  }
}

/** Adds consecutive blocks at `u` of stride `us` to the block columns `relative[begin .. end)` of a row of stride `s`. */
function addBlocks(
  value: Float64Array,
  u: number,
  us: number,
  relative: Uint32Array,
  begin: number,
  end: number,
  row: number,
  s: number,
): void {
  for (let j = begin; j < end; j++) {
    const t = row + 3 * s * relative[j];
    value[t] += value[u];
    value[t + 1] += value[u + 1];
    value[t + 2] += value[u + 2];
    value[t + s] += value[u + us];
    value[t + s + 1] += value[u + us + 1];
    value[t + s + 2] += value[u + us + 2];
    value[t + 2 * s] += value[u + 2 * us];
    value[t + 2 * s + 1] += value[u + 2 * us + 1];
    value[t + 2 * s + 2] += value[u + 2 * us + 2];
    u += 3 * us;
  }
}
