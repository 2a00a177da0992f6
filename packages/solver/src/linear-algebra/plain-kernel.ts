import type { BlockMatrix } from './block-matrix.ts';
import { children, NONE } from './elimination-tree.ts';
import { enterBlocks } from './enter-blocks.ts';
import { extendAdd } from './extend-add.ts';
import { rectangleRow, strideOf, triangleRow, triangleSize } from './front-layout.ts';
import { DONE, type FrontKernel, type FrontMemory, STOPPED, scratchRoom } from './front-memory.ts';
import { backwardBelow, backwardPivot, forwardBelow, forwardPivot, gather, scatter } from './front-solve.ts';
import type { Symbolic } from './symbolic.ts';

/** The kernel in plain TypeScript: 3x3 register tiles, one thread. */
export const plainKernel: FrontKernel = { name: 'plain', open: openPlain };

function openPlain(symbolic: Symbolic): FrontMemory {
  const { n, first, row, rowStart, parent, pivotAt, belowAt, factorSize } = symbolic;
  const { size, vectors, apart } = scratchRoom(symbolic, 1);
  const value = new Float64Array(factorSize + size);
  return {
    value,
    scratch: factorSize,
    vectors,
    apart,
    factor(matrix: BlockMatrix, stopped) {
      enterBlocks(symbolic.entries, matrix, value);
      return factorFronts(symbolic, value, stopped);
    },
    forward() {
      const y = factorSize;
      const t = y + 3 * n;
      for (let s = 0; s < parent.length; s++) {
        const width = first[s + 1] - first[s];
        const below = rowStart[s + 1] - rowStart[s];
        forwardPivot(value, pivotAt[s], width, y + 3 * first[s]);
        gather(value, y, row, rowStart[s], below, t);
        forwardBelow(value, belowAt[s], width, below, y + 3 * first[s], t);
        scatter(value, t, row, rowStart[s], below, y);
      }
      return true;
    },
    backward(count) {
      for (let s = parent.length - 1; s >= 0; s--) {
        const width = first[s + 1] - first[s];
        const below = rowStart[s + 1] - rowStart[s];
        for (let v = 0; v < count; v++) {
          const y = factorSize + v * apart;
          const t = y + 3 * n;
          gather(value, y, row, rowStart[s], below, t);
          backwardBelow(value, belowAt[s], width, below, t, y + 3 * first[s]);
          backwardPivot(value, pivotAt[s], width, y + 3 * first[s]);
        }
      }
      return true;
    },
    forwardPivot: (pivot, width, y) => forwardPivot(value, pivot, width, y),
    forwardBelow: (below, width, rows, y, t) => forwardBelow(value, below, width, rows, y, t),
    release: () => undefined,
  };
}

/** The tasks of the schedule, then the fronts above; the result as {@link FrontMemory.factor} says it. */
function factorFronts(symbolic: Symbolic, value: Float64Array, stopped: () => boolean): number {
  const { first, parent, rowStart, pivotAt, belowAt, factorSize, schedule } = symbolic;
  const { task, top, updateAt, poolSize } = schedule;
  const { firstChild, nextSibling } = children(parent);
  const stack = factorSize + poolSize;
  const factorFront = (s: number, update: number, childUpdates: number): number => {
    const width = first[s + 1] - first[s];
    const below = rowStart[s + 1] - rowStart[s];
    value.fill(0, update, update + triangleSize(below));
    for (let c = firstChild[s]; c !== NONE; c = nextSibling[c])
      extendAdd(symbolic, c, value, childUpdates + updateAt[c], update);
    const failed = factorPivot(value, pivotAt[s], width);
    if (failed !== DONE) return 3 * first[s] + failed;
    solveBelow(value, pivotAt[s], width, belowAt[s], below);
    subtractProduct(value, belowAt[s], width, below, update);
    return DONE;
  };
  for (let k = 0; k < task.length; k += 2) {
    if (stopped()) return STOPPED;
    const root = task[k + 1] - 1;
    for (let s = task[k]; s <= root; s++) {
      const failed = factorFront(s, (s < root ? stack : factorSize) + updateAt[s], stack);
      if (failed !== DONE) return failed;
    }
  }
  for (const s of top) {
    if (stopped()) return STOPPED;
    const failed = factorFront(s, factorSize + updateAt[s], factorSize);
    if (failed !== DONE) return failed;
  }
  return DONE;
}

function factorPivot(m: Float64Array, pivot: number, width: number): number {
  for (let i = 0; i < width; i++) {
    const row = pivot + triangleRow(width, i);
    const stride = strideOf(width, i);
    solveRow(m, pivot, width, row, stride, i);
    subtractTile(m, row + 3 * i * stride, stride, row, stride, row, stride, i);
    const failed = factorBlock(m, row + 3 * i * stride, stride);
    if (failed >= 0) return 3 * i + failed;
  }
  return -1;
}

function solveBelow(m: Float64Array, pivot: number, width: number, below: number, rows: number): void {
  for (let i = 0; i < rows; i++)
    solveRow(m, pivot, width, below + rectangleRow(rows, width, i), strideOf(rows, i), width);
}

function subtractProduct(m: Float64Array, below: number, width: number, rows: number, update: number): void {
  for (let i = 0; i < rows; i++) {
    const a = below + rectangleRow(rows, width, i);
    const stride = strideOf(rows, i);
    const target = update + triangleRow(rows, i);
    for (let j = 0; j <= i; j++)
      subtractTile(
        m,
        target + 3 * j * stride,
        stride,
        a,
        stride,
        below + rectangleRow(rows, width, j),
        strideOf(rows, j),
        width,
      );
  }
}

/** First `upTo` blocks of a block row: `X_j = (A_j - sum_k<j X_k L_jk^T) L_jj^-T`. */
function solveRow(m: Float64Array, pivot: number, width: number, row: number, stride: number, upTo: number): void {
  for (let j = 0; j < upTo; j++) {
    const l = pivot + triangleRow(width, j);
    const s = strideOf(width, j);
    const x = row + 3 * j * stride;
    subtractTile(m, x, stride, row, stride, l, s, j);
    const d = l + 3 * j * s;
    const r0 = m[d];
    const l10 = m[d + 1];
    const l20 = m[d + 2];
    const r1 = m[d + s + 1];
    const l21 = m[d + s + 2];
    const r2 = m[d + 2 * s + 2];
    for (let a = 0; a < 3; a++) {
      const x0 = m[x + a] * r0;
      const x1 = (m[x + stride + a] - x0 * l10) * r1;
      m[x + a] = x0;
      m[x + stride + a] = x1;
      m[x + 2 * stride + a] = (m[x + 2 * stride + a] - x0 * l20 - x1 * l21) * r2;
    }
  }
}

/** Cholesky factor of a diagonal block, reciprocals on its diagonal; the first column that is not positive, or -1. */
function factorBlock(m: Float64Array, at: number, stride: number): number {
  const d0 = m[at];
  if (!(d0 > 0)) return 0;
  const r0 = 1 / Math.sqrt(d0);
  const l10 = m[at + 1] * r0;
  const l20 = m[at + 2] * r0;
  const d1 = m[at + stride + 1] - l10 * l10;
  m[at] = r0;
  if (!(d1 > 0)) return 1;
  const r1 = 1 / Math.sqrt(d1);
  const l21 = (m[at + stride + 2] - l20 * l10) * r1;
  const d2 = m[at + 2 * stride + 2] - l20 * l20 - l21 * l21;
  m[at + stride + 1] = r1;
  if (!(d2 > 0)) return 2;
  m[at + 1] = l10;
  m[at + 2] = l20;
  m[at + stride + 2] = l21;
  m[at + 2 * stride + 2] = 1 / Math.sqrt(d2);
  return -1;
}

/** `C <- C - A B^T` for one 3x3 block C and block rows A and B of `count` blocks. */
function subtractTile(
  m: Float64Array,
  c: number,
  cs: number,
  a: number,
  as: number,
  b: number,
  bs: number,
  count: number,
): void {
  let c00 = 0;
  let c10 = 0;
  let c20 = 0;
  let c01 = 0;
  let c11 = 0;
  let c21 = 0;
  let c02 = 0;
  let c12 = 0;
  let c22 = 0;
  for (let k = 3 * count; k > 0; k--) {
    const a0 = m[a];
    const a1 = m[a + 1];
    const a2 = m[a + 2];
    const b0 = m[b];
    const b1 = m[b + 1];
    const b2 = m[b + 2];
    c00 += a0 * b0;
    c10 += a1 * b0;
    c20 += a2 * b0;
    c01 += a0 * b1;
    c11 += a1 * b1;
    c21 += a2 * b1;
    c02 += a0 * b2;
    c12 += a1 * b2;
    c22 += a2 * b2;
    a += as;
    b += bs;
  }
  m[c] -= c00;
  m[c + 1] -= c10;
  m[c + 2] -= c20;
  m[c + cs] -= c01;
  m[c + cs + 1] -= c11;
  m[c + cs + 2] -= c21;
  m[c + 2 * cs] -= c02;
  m[c + 2 * cs + 1] -= c12;
  m[c + 2 * cs + 2] -= c22;
}
