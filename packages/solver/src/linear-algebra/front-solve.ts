import { rectangleRow, strideOf, triangleRow } from './front-layout.ts';

/*
 * Triangular solves within one front. `m` is the factor's memory, `y` a vector whose entries `at ...` belong to the
 * front's pivot columns, `t` a vector of the rows below, `[3 * rows]`.
 */

/** `y <- L^-1 y`. */
export function forwardPivot(m: Float64Array, pivot: number, width: number, y: Float64Array, at: number): void {
  for (let i = 0; i < width; i++) {
    const s = strideOf(width, i);
    let l = pivot + triangleRow(width, i);
    let y0 = y[at + 3 * i];
    let y1 = y[at + 3 * i + 1];
    let y2 = y[at + 3 * i + 2];
    for (let k = at; k < at + 3 * i; k++) {
      const yk = y[k];
      y0 -= m[l] * yk;
      y1 -= m[l + 1] * yk;
      y2 -= m[l + 2] * yk;
      l += s;
    }
    y0 *= m[l];
    y1 = (y1 - m[l + 1] * y0) * m[l + s + 1];
    y2 = (y2 - m[l + 2] * y0 - m[l + s + 2] * y1) * m[l + 2 * s + 2];
    y[at + 3 * i] = y0;
    y[at + 3 * i + 1] = y1;
    y[at + 3 * i + 2] = y2;
  }
}

/** `y <- L^-T y`. */
export function backwardPivot(m: Float64Array, pivot: number, width: number, y: Float64Array, at: number): void {
  for (let i = width - 1; i >= 0; i--) {
    const s = strideOf(width, i);
    const row = pivot + triangleRow(width, i);
    const d = row + 3 * i * s;
    const y2 = y[at + 3 * i + 2] * m[d + 2 * s + 2];
    const y1 = (y[at + 3 * i + 1] - m[d + s + 2] * y2) * m[d + s + 1];
    const y0 = (y[at + 3 * i] - m[d + 1] * y1 - m[d + 2] * y2) * m[d];
    y[at + 3 * i] = y0;
    y[at + 3 * i + 1] = y1;
    y[at + 3 * i + 2] = y2;
    for (let k = 0, l = row; k < 3 * i; k++, l += s) y[at + k] -= m[l] * y0 + m[l + 1] * y1 + m[l + 2] * y2;
  }
}

/** `t <- B y`. */
export function multiplyBelow(
  m: Float64Array,
  below: number,
  width: number,
  rows: number,
  y: Float64Array,
  at: number,
  t: Float64Array,
): void {
  for (let i = 0; i < rows; i++) {
    const s = strideOf(rows, i);
    let l = below + rectangleRow(rows, width, i);
    let t0 = 0;
    let t1 = 0;
    let t2 = 0;
    for (let k = at; k < at + 3 * width; k++) {
      const yk = y[k];
      t0 += m[l] * yk;
      t1 += m[l + 1] * yk;
      t2 += m[l + 2] * yk;
      l += s;
    }
    t[3 * i] = t0;
    t[3 * i + 1] = t1;
    t[3 * i + 2] = t2;
  }
}

/** `y <- y - B^T t`. */
export function subtractTransposed(
  m: Float64Array,
  below: number,
  width: number,
  rows: number,
  t: Float64Array,
  y: Float64Array,
  at: number,
): void {
  for (let i = 0; i < rows; i++) {
    const s = strideOf(rows, i);
    let l = below + rectangleRow(rows, width, i);
    const t0 = t[3 * i];
    const t1 = t[3 * i + 1];
    const t2 = t[3 * i + 2];
    for (let k = at; k < at + 3 * width; k++) {
      y[k] -= m[l] * t0 + m[l + 1] * t1 + m[l + 2] * t2;
      l += s;
    }
  }
}
