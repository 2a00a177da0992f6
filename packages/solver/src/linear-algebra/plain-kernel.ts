import type { DenseKernel, FrontMemory } from './dense-kernel.ts';
import { rectangleRow, strideOf, triangleRow } from './front-layout.ts';
import { backwardBelow, backwardPivot, forwardBelow, forwardPivot } from './front-solve.ts';

/** The dense kernel in plain TypeScript: 3x3 register tiles. */
export const plainKernel: DenseKernel = { name: 'plain', open: openPlain };

function openPlain(size: number): FrontMemory {
  const value = new Float64Array(size);
  return {
    value,
    factorPivot: (pivot, width) => factorPivot(value, pivot, width),
    solveBelow: (pivot, width, below, rows) => solveBelow(value, pivot, width, below, rows),
    subtractProduct: (below, width, rows, update) => subtractProduct(value, below, width, rows, update),
    forwardPivot: (pivot, width, y) => forwardPivot(value, pivot, width, y),
    forwardBelow: (below, width, rows, y, t) => forwardBelow(value, below, width, rows, y, t),
    backwardBelow: (below, width, rows, t, y) => backwardBelow(value, below, width, rows, t, y),
    backwardPivot: (pivot, width, y) => backwardPivot(value, pivot, width, y),
  };
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
