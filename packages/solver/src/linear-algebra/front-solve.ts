import { rectangleRow, strideOf, triangleRow } from './front-layout.ts';

/*
 * Triangular solves within one front, in plain TypeScript. `m` is the factor's memory, which holds the vectors as well:
 * entries from `y` on belong to the front's pivot columns, entries from `t` on to the rows below.
 */

/** `y <- L^-1 y`. */
export function forwardPivot(m: Float64Array, pivot: number, width: number, y: number): void {
  for (let i = 0; i < width; i += 2) {
    const stride = strideOf(width, i);
    const row = pivot + triangleRow(width, i);
    const here = y + 3 * i;
    subtractRows(m, row, stride, 3 * i, y, here);
    forwardBlock(m, row + 3 * i * stride, stride, here);
    if (stride === 3) return;
    subtractBlock(m, row + 18 * i + 3, here, here + 3);
    forwardBlock(m, row + 18 * i + 21, stride, here + 3);
  }
}

/** `y <- L^-T y`. */
export function backwardPivot(m: Float64Array, pivot: number, width: number, y: number): void {
  for (let i = (width - 1) & ~1; i >= 0; i -= 2) {
    const stride = strideOf(width, i);
    const row = pivot + triangleRow(width, i);
    const here = y + 3 * i;
    if (stride === 6) {
      backwardBlock(m, row + 18 * i + 21, stride, here + 3);
      subtractTransposedBlock(m, row + 18 * i + 3, here + 3, here);
    }
    backwardBlock(m, row + 3 * i * stride, stride, here);
    subtractColumns(m, row, stride, 3 * i, here, y);
  }
}

/** `t <- t - B y`. */
export function forwardBelow(m: Float64Array, below: number, width: number, rows: number, y: number, t: number): void {
  for (let i = 0; i < rows; i += 2)
    subtractRows(m, below + rectangleRow(rows, width, i), strideOf(rows, i), 3 * width, y, t + 3 * i);
}

/** `y <- y - B^T t`. */
export function backwardBelow(m: Float64Array, below: number, width: number, rows: number, t: number, y: number): void {
  for (let i = 0; i < rows; i += 2)
    subtractColumns(m, below + rectangleRow(rows, width, i), strideOf(rows, i), 3 * width, t + 3 * i, y);
}

/** `t <- t - A y` for a panel A of `stride` rows and `n` columns. */
function subtractRows(m: Float64Array, a: number, stride: number, n: number, y: number, t: number): void {
  let t0 = 0;
  let t1 = 0;
  let t2 = 0;
  if (stride === 6) {
    let t3 = 0;
    let t4 = 0;
    let t5 = 0;
    for (let k = y; k < y + n; k++) {
      const yk = m[k];
      t0 += m[a] * yk;
      t1 += m[a + 1] * yk;
      t2 += m[a + 2] * yk;
      t3 += m[a + 3] * yk;
      t4 += m[a + 4] * yk;
      t5 += m[a + 5] * yk;
      a += 6;
    }
    m[t + 3] -= t3;
    m[t + 4] -= t4;
    m[t + 5] -= t5;
  } else
    for (let k = y; k < y + n; k++) {
      const yk = m[k];
      t0 += m[a] * yk;
      t1 += m[a + 1] * yk;
      t2 += m[a + 2] * yk;
      a += 3;
    }
  m[t] -= t0;
  m[t + 1] -= t1;
  m[t + 2] -= t2;
}

/** `y <- y - A^T t` for a panel A of `stride` rows and `n` columns. */
function subtractColumns(m: Float64Array, a: number, stride: number, n: number, t: number, y: number): void {
  const t0 = m[t];
  const t1 = m[t + 1];
  const t2 = m[t + 2];
  if (stride === 6) {
    const t3 = m[t + 3];
    const t4 = m[t + 4];
    const t5 = m[t + 5];
    for (let k = y; k < y + n; k++) {
      m[k] -= m[a] * t0 + m[a + 1] * t1 + m[a + 2] * t2 + (m[a + 3] * t3 + m[a + 4] * t4 + m[a + 5] * t5);
      a += 6;
    }
  } else
    for (let k = y; k < y + n; k++) {
      m[k] -= m[a] * t0 + m[a + 1] * t1 + m[a + 2] * t2;
      a += 3;
    }
}

/** `y <- L^-1 y` for one diagonal block, reciprocals on its diagonal. */
function forwardBlock(m: Float64Array, d: number, s: number, y: number): void {
  const y0 = m[y] * m[d];
  const y1 = (m[y + 1] - m[d + 1] * y0) * m[d + s + 1];
  m[y] = y0;
  m[y + 1] = y1;
  m[y + 2] = (m[y + 2] - m[d + 2] * y0 - m[d + s + 2] * y1) * m[d + 2 * s + 2];
}

/** `y <- L^-T y` for one diagonal block. */
function backwardBlock(m: Float64Array, d: number, s: number, y: number): void {
  const y2 = m[y + 2] * m[d + 2 * s + 2];
  const y1 = (m[y + 1] - m[d + s + 2] * y2) * m[d + s + 1];
  m[y] = (m[y] - m[d + 1] * y1 - m[d + 2] * y2) * m[d];
  m[y + 1] = y1;
  m[y + 2] = y2;
}

/** `z <- z - C y` for a block C at stride 6. */
function subtractBlock(m: Float64Array, c: number, y: number, z: number): void {
  const y0 = m[y];
  const y1 = m[y + 1];
  const y2 = m[y + 2];
  m[z] -= m[c] * y0 + m[c + 6] * y1 + m[c + 12] * y2;
  m[z + 1] -= m[c + 1] * y0 + m[c + 7] * y1 + m[c + 13] * y2;
  m[z + 2] -= m[c + 2] * y0 + m[c + 8] * y1 + m[c + 14] * y2;
}

/** `z <- z - C^T y` for a block C at stride 6. */
function subtractTransposedBlock(m: Float64Array, c: number, y: number, z: number): void {
  const y0 = m[y];
  const y1 = m[y + 1];
  const y2 = m[y + 2];
  m[z] -= m[c] * y0 + m[c + 1] * y1 + m[c + 2] * y2;
  m[z + 1] -= m[c + 6] * y0 + m[c + 7] * y1 + m[c + 8] * y2;
  m[z + 2] -= m[c + 12] * y0 + m[c + 13] * y1 + m[c + 14] * y2;
}

/** `t <- y` at the block rows `row[from .. from + count)`. */
export function gather(m: Float64Array, y: number, row: Uint32Array, from: number, count: number, t: number): void {
  for (let i = from; i < from + count; i++, t += 3) {
    const at = y + 3 * row[i];
    m[t] = m[at];
    m[t + 1] = m[at + 1];
    m[t + 2] = m[at + 2];
  }
}

/** `y <- t` at the block rows `row[from .. from + count)`. */
export function scatter(m: Float64Array, t: number, row: Uint32Array, from: number, count: number, y: number): void {
  for (let i = from; i < from + count; i++, t += 3) {
    const at = y + 3 * row[i];
    m[at] = m[t];
    m[at + 1] = m[t + 1];
    m[at + 2] = m[t + 2];
  }
}
