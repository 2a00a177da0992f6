/** Share of the head's length by which a deviation of the limit should rise. */
const SHARE = 0.045;
/** Share that the largest deviation may rise. */
const MOST = 0.16;

/** Largest of 1, 2, 5 times a power of ten that is not above the value. */
export function roundDown(value: number): number {
  const decade = 10 ** Math.floor(Math.log10(value) + 1e-9);
  const lead = value / decade + 1e-9;
  return (lead >= 5 ? 5 : lead >= 2 ? 2 : 1) * decade;
}

/**
 * Factor on the deflection that makes the limit visible. It hangs on the limit, not on the answer: a stiffer head looks
 * flatter. Only a head far over its limit is tamed.
 *
 * @param length of the head, mm
 * @param limit on its bow, mm
 * @param largest deviation, mm
 */
export function automaticExaggeration(length: number, limit: number, largest: number): number {
  return Math.max(1, roundDown(Math.min((SHARE * length) / limit, (MOST * length) / Math.max(largest, 1e-12))));
}
