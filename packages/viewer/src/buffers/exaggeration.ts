/** Share of the head's length by which a deviation of the limit should rise. */
const SHARE = 0.045;
/** Shares that the largest deviation may rise, and is to rise where it is small. */
const MOST = 0.16;
const LEAST = 0.018;
/** Small ones are enlarged no further: what is as good as flat looks flat. */
const FACTOR_MOST = 1000;

/** Largest of 1, 2, 5 times a power of ten that is not above the value. */
export function roundDown(value: number): number {
  const decade = 10 ** Math.floor(Math.log10(value) + 1e-9);
  const lead = value / decade + 1e-9;
  return (lead >= 5 ? 5 : lead >= 2 ? 2 : 1) * decade;
}

/**
 * Factor on the deflection that makes the limit visible. It hangs on the limit: a stiffer head looks flatter, but not flat.
 * A head far over its limit is tamed.
 *
 * @param length of the head, mm
 * @param limit on its bow, mm
 * @param largest deviation, mm; zero before there is an answer
 * @param steady deviation that is to be seen, mm: during a drag that of before, so that the shape keeps its scale
 */
export function automaticExaggeration(length: number, limit: number, largest: number, steady = largest): number {
  const rising = (share: number, deviation: number): number => (share * length) / Math.max(deviation, 1e-12);
  const wanted = Math.max(rising(SHARE, limit), steady === 0 ? 0 : Math.min(rising(LEAST, steady), FACTOR_MOST));
  return Math.max(1, roundDown(Math.min(wanted, rising(MOST, largest))));
}
