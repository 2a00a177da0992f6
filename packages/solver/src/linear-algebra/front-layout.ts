/*
 * How fronts lie in memory. A block is 3x3. Block rows go in panels of two, so that a panel has 6 scalar rows; a panel
 * is stored column by column, 6 numbers each, and an odd last panel has 3 numbers each. The dense kernel then reads
 * both factors of every product straight through, and the next panel follows without a gap.
 *
 * A triangle of nb block rows keeps 2p + 2 block columns in panel p (the odd last one: nb); what stands above the
 * diagonal is neither read nor defined. A rectangle keeps all its columns in every panel.
 */

/** Numbers that a triangle of `nb` block rows takes. */
export function triangleSize(nb: number): number {
  const full = nb >>> 1;
  return 18 * full * (full + 1) + (nb & 1) * 9 * nb;
}

/** Numbers that a rectangle of `rows` by `columns` blocks takes. */
export function rectangleSize(rows: number, columns: number): number {
  return 9 * rows * columns;
}

/** Distance between columns within block row `row` out of `rows`. */
export function strideOf(rows: number, row: number): 3 | 6 {
  return (row | 1) < rows ? 6 : 3;
}

/** Where block row `row` starts, from the start of its triangle of `nb` block rows. */
export function triangleRow(nb: number, row: number): number {
  const p = row >>> 1;
  return 18 * p * (p + 1) + ((row | 1) < nb ? 3 * (row & 1) : 0);
}

/** Where block row `row` starts, from the start of its rectangle of `rows` by `columns` blocks. */
export function rectangleRow(rows: number, columns: number, row: number): number {
  return 18 * (row >>> 1) * columns + ((row | 1) < rows ? 3 * (row & 1) : 0);
}
