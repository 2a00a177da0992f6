import { rectangleRow, strideOf, triangleRow } from './front-layout.ts';

/*
 * Triangular solves within one front. `m` is the factor's memory; `y` is a vector whose entries `at ...` belong to the
 * front's pivot columns; `t` holds the rows below, `[3 * rows]`.
 */

/** `y <- L^-1 y`. */
export function forwardPivot(m: Float64Array, pivot: number, width: number, y: Float64Array, at: number): void {
  for (let i = 0; i < width; i += 2) {
    const stride = strideOf(width, i);
    const row = pivot + triangleRow(width, i);
    const here = at + 3 * i;
    subtractRows(m, row, stride, 3 * i, y, at, y, here);
    forwardBlock(m, row + 3 * i * stride, stride, y, here);
    if (stride === 3) return;
    subtractBlock(m, row + 18 * i + 3, y, here, here + 3);
    forwardBlock(m, row + 18 * i + 21, stride, y, here + 3);
  }
}

/** `y <- L^-T y`. */
export function backwardPivot(m: Float64Array, pivot: number, width: number, y: Float64Array, at: number): void {
  for (let i = (width - 1) & ~1; i >= 0; i -= 2) {
    const stride = strideOf(width, i);
    const row = pivot + triangleRow(width, i);
    const here = at + 3 * i;
    if (stride === 6) {
      backwardBlock(m, row + 18 * i + 21, stride, y, here + 3);
      subtractTransposedBlock(m, row + 18 * i + 3, y, here + 3, here);
    }
    backwardBlock(m, row + 3 * i * stride, stride, y, here);
    subtractColumns(m, row, stride, 3 * i, y, here, y, at);
  }
}

/** `t <- t - B y`. */
export function forwardBelow(
  m: Float64Array,
  below: number,
  width: number,
  rows: number,
  y: Float64Array,
  at: number,
  t: Float64Array,
): void {
  for (let i = 0; i < rows; i += 2)
    subtractRows(m, below + rectangleRow(rows, width, i), strideOf(rows, i), 3 * width, y, at, t, 3 * i);
}

/** `y <- y - B^T t`. */
export function backwardBelow(
  m: Float64Array,
  below: number,
  width: number,
  rows: number,
  t: Float64Array,
  y: Float64Array,
  at: number,
): void {
  for (let i = 0; i < rows; i += 2)
    subtractColumns(m, below + rectangleRow(rows, width, i), strideOf(rows, i), 3 * width, t, 3 * i, y, at);
}

/** `t <- t - A y` for a panel A of `stride` rows and `n` columns. */
function subtractRows(
  m: Float64Array,
  a: number,
  stride: number,
  n: number,
  y: Float64Array,
  at: number,
  t: Float64Array,
  to: number,
): void {
  let t0 = 0;
  let t1 = 0;
  let t2 = 0;
  if (stride === 6) {
    let t3 = 0;
    let t4 = 0;
    let t5 = 0;
    for (let k = at; k < at + n; k++) {
      const yk = y[k];
      t0 += m[a] * yk;
      t1 += m[a + 1] * yk;
      t2 += m[a + 2] * yk;
      t3 += m[a + 3] * yk;
      t4 += m[a + 4] * yk;
      t5 += m[a + 5] * yk;
      a += 6;
    }
    t[to + 3] -= t3;
    t[to + 4] -= t4;
    t[to + 5] -= t5;
  } else
    for (let k = at; k < at + n; k++) {
      const yk = y[k];
      t0 += m[a] * yk;
      t1 += m[a + 1] * yk;
      t2 += m[a + 2] * yk;
      a += 3;
    }
  t[to] -= t0;
  t[to + 1] -= t1;
  t[to + 2] -= t2;
}

/** `y <- y - A^T t` for a panel A of `stride` rows and `n` columns. */
function subtractColumns(
  m: Float64Array,
  a: number,
  stride: number,
  n: number,
  t: Float64Array,
  from: number,
  y: Float64Array,
  at: number,
): void {
  const t0 = t[from];
  const t1 = t[from + 1];
  const t2 = t[from + 2];
  if (stride === 6) {
    const t3 = t[from + 3];
    const t4 = t[from + 4];
    const t5 = t[from + 5];
    for (let k = at; k < at + n; k++) {
      y[k] -= m[a] * t0 + m[a + 1] * t1 + m[a + 2] * t2 + (m[a + 3] * t3 + m[a + 4] * t4 + m[a + 5] * t5);
      a += 6;
    }
  } else
    for (let k = at; k < at + n; k++) {
      y[k] -= m[a] * t0 + m[a + 1] * t1 + m[a + 2] * t2;
      a += 3;
    }
}

/** `y <- L^-1 y` for one diagonal block, reciprocals on its diagonal. */
function forwardBlock(m: Float64Array, d: number, s: number, y: Float64Array, at: number): void {
  const y0 = y[at] * m[d];
  const y1 = (y[at + 1] - m[d + 1] * y0) * m[d + s + 1];
  y[at] = y0;
  y[at + 1] = y1;
  y[at + 2] = (y[at + 2] - m[d + 2] * y0 - m[d + s + 2] * y1) * m[d + 2 * s + 2];
}

/** `y <- L^-T y` for one diagonal block. */
function backwardBlock(m: Float64Array, d: number, s: number, y: Float64Array, at: number): void {
  const y2 = y[at + 2] * m[d + 2 * s + 2];
  const y1 = (y[at + 1] - m[d + s + 2] * y2) * m[d + s + 1];
  y[at] = (y[at] - m[d + 1] * y1 - m[d + 2] * y2) * m[d];
  y[at + 1] = y1;
  y[at + 2] = y2;
}

/** `y[to ..] <- y[to ..] - C y[from ..]` for a block C at stride 6. */
function subtractBlock(m: Float64Array, c: number, y: Float64Array, from: number, to: number): void {
  const y0 = y[from];
  const y1 = y[from + 1];
  const y2 = y[from + 2];
  y[to] -= m[c] * y0 + m[c + 6] * y1 + m[c + 12] * y2;
  y[to + 1] -= m[c + 1] * y0 + m[c + 7] * y1 + m[c + 13] * y2;
  y[to + 2] -= m[c + 2] * y0 + m[c + 8] * y1 + m[c + 14] * y2;
}

/** `y[to ..] <- y[to ..] - C^T y[from ..]` for a block C at stride 6. */
function subtractTransposedBlock(m: Float64Array, c: number, y: Float64Array, from: number, to: number): void {
  const y0 = y[from];
  const y1 = y[from + 1];
  const y2 = y[from + 2];
  y[to] -= m[c] * y0 + m[c + 1] * y1 + m[c + 2] * y2;
  y[to + 1] -= m[c + 6] * y0 + m[c + 7] * y1 + m[c + 8] * y2;
  y[to + 2] -= m[c + 12] * y0 + m[c + 13] * y1 + m[c + 14] * y2;
}
