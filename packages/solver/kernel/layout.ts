/*
 * How fronts lie in memory: see ../src/linear-algebra/front-layout.ts. Here addresses are in bytes; sizes count 3x3
 * blocks. AssemblyScript, with 128-bit SIMD.
 */

/** Bytes of a number. */
export const F: usize = 8;

/** `acc - a b`, fused where the relaxed instructions are there. */
@inline
export function less(acc: v128, a: v128, b: v128): v128 {
  if (ASC_FEATURE_RELAXED_SIMD) return f64x2.relaxed_nmadd(a, b, acc);
  return f64x2.sub(acc, f64x2.mul(a, b));
}

/** `acc + a b`, fused likewise. */
@inline
export function more(acc: v128, a: v128, b: v128): v128 {
  if (ASC_FEATURE_RELAXED_SIMD) return f64x2.relaxed_madd(a, b, acc);
  return f64x2.add(acc, f64x2.mul(a, b));
}

/** Distance between columns within block row `row` out of `rows`. */
@inline
export function stride(rows: u32, row: u32): usize {
  return (row | 1) < rows ? 6 * F : 3 * F;
}

/** Where block row `row` starts in its triangle of `nb` block rows. */
@inline
export function triangleRow(nb: u32, row: u32): usize {
  const p: usize = row >>> 1;
  return F * (18 * p * (p + 1) + ((row | 1) < nb ? 3 * (row & 1) : 0));
}

/** Where block row `row` starts in its rectangle of `rows` by `columns` blocks. */
@inline
export function rectangleRow(rows: u32, columns: u32, row: u32): usize {
  return F * (18 * <usize>(row >>> 1) * columns + ((row | 1) < rows ? 3 * (row & 1) : 0));
}

/** Bytes that a triangle of `nb` block rows takes. */
@inline
export function triangleBytes(nb: u32): usize {
  const full: usize = nb >>> 1;
  return F * (18 * full * (full + 1) + 9 * <usize>((nb & 1) * nb));
}
