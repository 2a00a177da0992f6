import { F, less } from './layout';

/*
 * The factorisation is built from one tile: 6 rows (a panel of two block rows) by 3 columns (one block column), whose
 * nine vectors stay in registers while the product runs over k. An odd last panel has 3 rows.
 */

/** `C <- C - A B^T`, C 6x3 at stride 6, A a whole panel, B a block row at stride bs, k over `count` block columns. */
@inline
export function tile6(c: usize, a: usize, b: usize, bs: usize, count: u32): void {
  let c00 = v128.load(c, 0);
  let c10 = v128.load(c, 16);
  let c20 = v128.load(c, 32);
  let c01 = v128.load(c, 48);
  let c11 = v128.load(c, 64);
  let c21 = v128.load(c, 80);
  let c02 = v128.load(c, 96);
  let c12 = v128.load(c, 112);
  let c22 = v128.load(c, 128);
  for (let end = a + <usize>count * 144; a < end; a += 48) {
    const a0 = v128.load(a, 0);
    const a1 = v128.load(a, 16);
    const a2 = v128.load(a, 32);
    const b0 = v128.load64_splat(b, 0);
    c00 = less(c00, a0, b0);
    c10 = less(c10, a1, b0);
    c20 = less(c20, a2, b0);
    const b1 = v128.load64_splat(b, 8);
    c01 = less(c01, a0, b1);
    c11 = less(c11, a1, b1);
    c21 = less(c21, a2, b1);
    const b2 = v128.load64_splat(b, 16);
    c02 = less(c02, a0, b2);
    c12 = less(c12, a1, b2);
    c22 = less(c22, a2, b2);
    b += bs;
  }
  v128.store(c, c00, 0);
  v128.store(c, c10, 16);
  v128.store(c, c20, 32);
  v128.store(c, c01, 48);
  v128.store(c, c11, 64);
  v128.store(c, c21, 80);
  v128.store(c, c02, 96);
  v128.store(c, c12, 112);
  v128.store(c, c22, 128);
}

/** `C <- C - A B^T` for one block row: C 3x3 at stride cs, A at stride as, B at stride bs. */
export function tile3(c: usize, cs: usize, a: usize, as: usize, b: usize, bs: usize, count: u32): void {
  let c0 = v128.load(c);
  let c1 = v128.load(c + cs);
  let c2 = v128.load(c + 2 * cs);
  let d0 = load<f64>(c, 16);
  let d1 = load<f64>(c + cs, 16);
  let d2 = load<f64>(c + 2 * cs, 16);
  for (let k = 3 * count; k > 0; k--) {
    const a0 = v128.load(a);
    const a2 = load<f64>(a, 16);
    c0 = less(c0, a0, v128.load64_splat(b, 0));
    c1 = less(c1, a0, v128.load64_splat(b, 8));
    c2 = less(c2, a0, v128.load64_splat(b, 16));
    d0 -= a2 * load<f64>(b, 0);
    d1 -= a2 * load<f64>(b, 8);
    d2 -= a2 * load<f64>(b, 16);
    a += as;
    b += bs;
  }
  v128.store(c, c0);
  v128.store(c + cs, c1);
  v128.store(c + 2 * cs, c2);
  store<f64>(c, d0, 16);
  store<f64>(c + cs, d1, 16);
  store<f64>(c + 2 * cs, d2, 16);
}

/** `X <- X L^-T` for 6 rows and one block column; d is the diagonal block of L at stride s, reciprocals on its diagonal. */
@inline
export function solve6(x: usize, d: usize, s: usize): void {
  const r0 = v128.load64_splat(d);
  const l10 = v128.load64_splat(d, 8);
  const l20 = v128.load64_splat(d, 16);
  const r1 = v128.load64_splat(d + s, 8);
  const l21 = v128.load64_splat(d + s, 16);
  const r2 = v128.load64_splat(d + 2 * s, 16);
  for (let h: usize = 0; h < 48; h += 16) {
    const x0 = f64x2.mul(v128.load(x + h, 0), r0);
    const x1 = f64x2.mul(less(v128.load(x + h, 48), x0, l10), r1);
    const x2 = f64x2.mul(less(less(v128.load(x + h, 96), x0, l20), x1, l21), r2);
    v128.store(x + h, x0, 0);
    v128.store(x + h, x1, 48);
    v128.store(x + h, x2, 96);
  }
}

/** The same for one block row at stride xs. */
export function solve3(x: usize, xs: usize, d: usize, s: usize): void {
  const r0 = load<f64>(d);
  const l10 = load<f64>(d, 8);
  const l20 = load<f64>(d, 16);
  const r1 = load<f64>(d + s, 8);
  const l21 = load<f64>(d + s, 16);
  const r2 = load<f64>(d + 2 * s, 16);
  for (let a: usize = 0; a < 3 * F; a += F) {
    const x0 = load<f64>(x + a) * r0;
    const x1 = (load<f64>(x + xs + a) - x0 * l10) * r1;
    store<f64>(x + a, x0);
    store<f64>(x + xs + a, x1);
    store<f64>(x + 2 * xs + a, (load<f64>(x + 2 * xs + a) - x0 * l20 - x1 * l21) * r2);
  }
}

/** Cholesky factor of a diagonal block, reciprocals on its diagonal; the first column that is not positive, or -1. */
function factorBlock(at: usize, s: usize): i32 {
  const d0 = load<f64>(at);
  if (!(d0 > 0)) return 0;
  const r0 = 1 / sqrt(d0);
  const l10 = load<f64>(at, 8) * r0;
  const l20 = load<f64>(at, 16) * r0;
  store<f64>(at, r0);
  const d1 = load<f64>(at + s, 8) - l10 * l10;
  if (!(d1 > 0)) return 1;
  const r1 = 1 / sqrt(d1);
  const l21 = (load<f64>(at + s, 16) - l20 * l10) * r1;
  store<f64>(at + s, r1, 8);
  const d2 = load<f64>(at + 2 * s, 16) - l20 * l20 - l21 * l21;
  if (!(d2 > 0)) return 2;
  store<f64>(at, l10, 8);
  store<f64>(at, l20, 16);
  store<f64>(at + s, l21, 16);
  store<f64>(at + 2 * s, 1 / sqrt(d2), 16);
  return -1;
}

/** One block row's part of the factor: update its diagonal block, factor it. */
@inline
export function factorRow(row: usize, s: usize, i: u32): i32 {
  const d = row + 3 * <usize>i * s;
  tile3(d, s, row, s, row, s, i);
  return factorBlock(d, s);
}
