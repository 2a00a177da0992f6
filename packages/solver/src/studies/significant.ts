/** Digits of every figure in a row. */
const DIGITS = 9;

/**
 * The figure to nine significant digits, as it is written to a row: far beyond what a model is good for, and short of where
 * processors that fuse multiplication and addition differ from those that do not.
 */
export function significant(value: number): number {
  return Number(value.toPrecision(DIGITS)) + 0;
}
