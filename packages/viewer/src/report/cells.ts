/** What stands in a cell without a value. */
export const NONE = '\u2013';

/** A place on the head, mm, as it was given, with two decimals at least. */
export function coordinate(value: number): string {
  const short = value.toFixed(2);
  return (Math.abs(Number(short) - value) < 1e-9 ? short : String(Number(value.toFixed(6)))).replace('-', '\u2212');
}
