import { rectangleRow, strideOf, triangleRow } from './front-layout.ts';
import type { Symbolic } from './symbolic.ts';

/**
 * Adds the update triangle of a supernode to its parent's front, block by block.
 *
 * @param stack address of the update stacks in `value`
 */
export function extendAdd(symbolic: Symbolic, child: number, value: Float64Array, stack: number): void {
  const { first, parent, rowStart, relative, pivotAt, belowAt, updateAt } = symbolic;
  const p = parent[child];
  const from = rowStart[child];
  const count = rowStart[child + 1] - from;
  const width = first[p + 1] - first[p];
  const below = rowStart[p + 1] - rowStart[p];
  const source = stack + updateAt[child];
  for (let i = 0; i < count; i++) {
    const row = relative[from + i];
    const inPivot = row < width;
    const left = inPivot ? pivotAt[p] + triangleRow(width, row) : belowAt[p] + rectangleRow(below, width, row - width);
    const stride = inPivot ? strideOf(width, row) : strideOf(below, row - width);
    const right = inPivot ? 0 : stack + updateAt[p] + triangleRow(below, row - width) - 3 * width * stride;
    const u = source + triangleRow(count, i);
    const us = strideOf(count, i);
    for (let j = 0; j <= i; j++) {
      const column = relative[from + j];
      addBlock(value, (column < width ? left : right) + 3 * column * stride, stride, u + 3 * j * us, us);
    }
  }
}

function addBlock(value: Float64Array, to: number, toStride: number, from: number, fromStride: number): void {
  for (let column = 0; column < 3; column++) {
    value[to] += value[from];
    value[to + 1] += value[from + 1];
    value[to + 2] += value[from + 2];
    to += toStride;
    from += fromStride;
  }
}
