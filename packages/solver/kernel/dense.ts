/*
 * Dense kernel of the sparse factorisation, in AssemblyScript with 128-bit SIMD. Layout of fronts: see
 * ../src/linear-algebra/front-layout.ts. Addresses are in bytes; sizes count 3x3 blocks.
 *
 * Everything is built from one tile: 6 rows (a panel of two block rows) by 3 columns (one block column), whose nine
 * vectors stay in registers while the product runs over k. An odd last panel has 3 rows.
 */

const F: usize = 8;

/** `acc - a b`, fused where the relaxed instructions are there. */
@inline
function less(acc: v128, a: v128, b: v128): v128 {
  if (ASC_FEATURE_RELAXED_SIMD) return f64x2.relaxed_nmadd(a, b, acc);
  return f64x2.sub(acc, f64x2.mul(a, b));
}

@inline
function stride(rows: u32, row: u32): usize {
  return (row | 1) < rows ? 6 * F : 3 * F;
}

@inline
function triangleRow(nb: u32, row: u32): usize {
  const p: usize = row >>> 1;
  return F * (18 * p * (p + 1) + ((row | 1) < nb ? 3 * (row & 1) : 0));
}

@inline
function rectangleRow(rows: u32, columns: u32, row: u32): usize {
  return F * (18 * <usize>(row >>> 1) * columns + ((row | 1) < rows ? 3 * (row & 1) : 0));
}

/** `C <- C - A B^T`, C 6x3 at stride 6, A a whole panel, B a block row at stride bs, k over `count` block columns. */
@inline
function tile6(c: usize, a: usize, b: usize, bs: usize, count: u32): void {
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
function tile3(c: usize, cs: usize, a: usize, as: usize, b: usize, bs: usize, count: u32): void {
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
function solve6(x: usize, d: usize, s: usize): void {
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
function solve3(x: usize, xs: usize, d: usize, s: usize): void {
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
function factorRow(row: usize, s: usize, i: u32): i32 {
  const d = row + 3 * <usize>i * s;
  tile3(d, s, row, s, row, s, i);
  return factorBlock(d, s);
}

/** `L L^T` of the triangle of `width` block rows at `pivot`, in place; first scalar column that is not positive, or -1. */
export function factorPivot(pivot: usize, width: u32): i32 {
  for (let i: u32 = 0; i < width; i += 2) {
    const s = stride(width, i);
    const row = pivot + triangleRow(width, i);
    const pair = (i | 1) < width;
    for (let j: u32 = 0; j < i; j++) {
      const l = pivot + triangleRow(width, j);
      const x = row + 3 * <usize>j * s;
      const sj = stride(width, j);
      if (pair) {
        tile6(x, row, l, sj, j);
        solve6(x, l + 3 * <usize>j * sj, sj);
      } else {
        tile3(x, s, row, s, l, sj, j);
        solve3(x, s, l + 3 * <usize>j * sj, sj);
      }
    }
    let failed = factorRow(row, s, i);
    if (failed >= 0) return 3 * i + failed;
    if (!pair) continue;
    const next = row + 3 * F;
    const x = next + 3 * <usize>i * s;
    tile3(x, s, next, s, row, s, i);
    solve3(x, s, row + 3 * <usize>i * s, s);
    failed = factorRow(next, s, i + 1);
    if (failed >= 0) return 3 * (i + 1) + failed;
  }
  return -1;
}

/** `B <- B L^-T` for the rectangle of `rows` by `width` blocks at `below`. */
export function solveBelow(pivot: usize, width: u32, below: usize, rows: u32): void {
  for (let i: u32 = 0; i < rows; i += 2) {
    const s = stride(rows, i);
    const row = below + rectangleRow(rows, width, i);
    const pair = (i | 1) < rows;
    for (let j: u32 = 0; j < width; j++) {
      const l = pivot + triangleRow(width, j);
      const x = row + 3 * <usize>j * s;
      const sj = stride(width, j);
      if (pair) {
        tile6(x, row, l, sj, j);
        solve6(x, l + 3 * <usize>j * sj, sj);
      } else {
        tile3(x, s, row, s, l, sj, j);
        solve3(x, s, l + 3 * <usize>j * sj, sj);
      }
    }
  }
}

/** `U <- U - B B^T` for the triangle of `rows` block rows at `update`. */
export function subtractProduct(below: usize, width: u32, rows: u32, update: usize): void {
  for (let i: u32 = 0; i < rows; i += 2) {
    const s = stride(rows, i);
    const a = below + rectangleRow(rows, width, i);
    const target = update + triangleRow(rows, i);
    const pair = (i | 1) < rows;
    // A whole panel reaches one block above the diagonal, into numbers that nobody reads.
    const last = pair ? i + 1 : i;
    for (let j: u32 = 0; j <= last; j++) {
      const b = below + rectangleRow(rows, width, j);
      const c = target + 3 * <usize>j * s;
      if (pair) tile6(c, a, b, stride(rows, j), width);
      else tile3(c, s, a, s, b, stride(rows, j), width);
    }
  }
}

/** `t <- t - A y` for a panel A of 6 rows and n columns. */
@inline
function subtractRows6(a: usize, n: u32, y: usize, t: usize): void {
  let t0 = v128.load(t, 0);
  let t1 = v128.load(t, 16);
  let t2 = v128.load(t, 32);
  for (let end = a + <usize>n * 48; a < end; a += 48) {
    const yk = v128.load64_splat(y);
    t0 = less(t0, v128.load(a, 0), yk);
    t1 = less(t1, v128.load(a, 16), yk);
    t2 = less(t2, v128.load(a, 32), yk);
    y += F;
  }
  v128.store(t, t0, 0);
  v128.store(t, t1, 16);
  v128.store(t, t2, 32);
}

/** The same for an odd last panel of 3 rows. */
function subtractRows3(a: usize, n: u32, y: usize, t: usize): void {
  let t0 = load<f64>(t, 0);
  let t1 = load<f64>(t, 8);
  let t2 = load<f64>(t, 16);
  for (; n > 0; n--) {
    const yk = load<f64>(y);
    t0 -= load<f64>(a, 0) * yk;
    t1 -= load<f64>(a, 8) * yk;
    t2 -= load<f64>(a, 16) * yk;
    a += 3 * F;
    y += F;
  }
  store<f64>(t, t0, 0);
  store<f64>(t, t1, 8);
  store<f64>(t, t2, 16);
}

/** `y <- y - A^T t` for a panel A of 6 rows and n columns, n a multiple of 3. */
@inline
function subtractColumns6(a: usize, n: u32, t: usize, y: usize): void {
  const t0 = v128.load(t, 0);
  const t1 = v128.load(t, 16);
  const t2 = v128.load(t, 32);
  for (let end = a + <usize>n * 48; a < end; a += 48) {
    const p = f64x2.add(
      f64x2.add(f64x2.mul(v128.load(a, 0), t0), f64x2.mul(v128.load(a, 16), t1)),
      f64x2.mul(v128.load(a, 32), t2),
    );
    store<f64>(y, load<f64>(y) - (f64x2.extract_lane(p, 0) + f64x2.extract_lane(p, 1)));
    y += F;
  }
}

function subtractColumns3(a: usize, n: u32, t: usize, y: usize): void {
  const t0 = load<f64>(t, 0);
  const t1 = load<f64>(t, 8);
  const t2 = load<f64>(t, 16);
  for (; n > 0; n--) {
    store<f64>(y, load<f64>(y) - (load<f64>(a, 0) * t0 + load<f64>(a, 8) * t1 + load<f64>(a, 16) * t2));
    a += 3 * F;
    y += F;
  }
}

/** `y <- L^-1 y` for one diagonal block at stride s, reciprocals on its diagonal. */
function forwardBlock(d: usize, s: usize, y: usize): void {
  const y0 = load<f64>(y) * load<f64>(d);
  const y1 = (load<f64>(y, 8) - load<f64>(d, 8) * y0) * load<f64>(d + s, 8);
  store<f64>(y, y0);
  store<f64>(y, y1, 8);
  store<f64>(y, (load<f64>(y, 16) - load<f64>(d, 16) * y0 - load<f64>(d + s, 16) * y1) * load<f64>(d + 2 * s, 16), 16);
}

/** `y <- L^-T y` for one diagonal block. */
function backwardBlock(d: usize, s: usize, y: usize): void {
  const y2 = load<f64>(y, 16) * load<f64>(d + 2 * s, 16);
  const y1 = (load<f64>(y, 8) - load<f64>(d + s, 16) * y2) * load<f64>(d + s, 8);
  store<f64>(y, (load<f64>(y) - load<f64>(d, 8) * y1 - load<f64>(d, 16) * y2) * load<f64>(d));
  store<f64>(y, y1, 8);
  store<f64>(y, y2, 16);
}

/** `z <- z - C y` for a block C at stride 6. */
function subtractBlock(c: usize, y: usize, z: usize): void {
  for (let a: usize = 0; a < 3 * F; a += F) {
    const p =
      load<f64>(c + a, 0) * load<f64>(y, 0) + load<f64>(c + a, 48) * load<f64>(y, 8) + load<f64>(c + a, 96) * load<f64>(y, 16);
    store<f64>(z + a, load<f64>(z + a) - p);
  }
}

/** `z <- z - C^T y` for a block C at stride 6. */
function subtractTransposedBlock(c: usize, y: usize, z: usize): void {
  for (let b: usize = 0; b < 3; b++) {
    const column = c + b * 48;
    const p =
      load<f64>(column, 0) * load<f64>(y, 0) + load<f64>(column, 8) * load<f64>(y, 8) + load<f64>(column, 16) * load<f64>(y, 16);
    store<f64>(z + b * F, load<f64>(z + b * F) - p);
  }
}

/** `y <- L^-1 y` for the triangle at `pivot`. */
export function forwardPivot(pivot: usize, width: u32, y: usize): void {
  for (let i: u32 = 0; i < width; i += 2) {
    const s = stride(width, i);
    const row = pivot + triangleRow(width, i);
    const d = row + 3 * <usize>i * s;
    const here = y + 3 * <usize>i * F;
    if ((i | 1) < width) {
      subtractRows6(row, 3 * i, y, here);
      forwardBlock(d, s, here);
      subtractBlock(d + 3 * F, here, here + 3 * F);
      forwardBlock(d + 21 * F, s, here + 3 * F);
    } else {
      subtractRows3(row, 3 * i, y, here);
      forwardBlock(d, s, here);
    }
  }
}

/** `y <- L^-T y` for the triangle at `pivot`. */
export function backwardPivot(pivot: usize, width: u32, y: usize): void {
  for (let i: i32 = (width - 1) & ~1; i >= 0; i -= 2) {
    const s = stride(width, i);
    const row = pivot + triangleRow(width, i);
    const d = row + 3 * <usize>i * s;
    const here = y + 3 * <usize>i * F;
    if (<u32>(i | 1) < width) {
      backwardBlock(d + 21 * F, s, here + 3 * F);
      subtractTransposedBlock(d + 3 * F, here + 3 * F, here);
      backwardBlock(d, s, here);
      subtractColumns6(row, 3 * i, here, y);
    } else {
      backwardBlock(d, s, here);
      subtractColumns3(row, 3 * i, here, y);
    }
  }
}

/** `t <- t - B y` for the rectangle at `below`. */
export function forwardBelow(below: usize, width: u32, rows: u32, y: usize, t: usize): void {
  for (let i: u32 = 0; i < rows; i += 2) {
    const a = below + rectangleRow(rows, width, i);
    if ((i | 1) < rows) subtractRows6(a, 3 * width, y, t + 3 * <usize>i * F);
    else subtractRows3(a, 3 * width, y, t + 3 * <usize>i * F);
  }
}

/** `y <- y - B^T t` for the rectangle at `below`. */
export function backwardBelow(below: usize, width: u32, rows: u32, t: usize, y: usize): void {
  for (let i: u32 = 0; i < rows; i += 2) {
    const a = below + rectangleRow(rows, width, i);
    if ((i | 1) < rows) subtractColumns6(a, 3 * width, t + 3 * <usize>i * F, y);
    else subtractColumns3(a, 3 * width, t + 3 * <usize>i * F, y);
  }
}
