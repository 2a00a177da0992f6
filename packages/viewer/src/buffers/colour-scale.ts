/** Which values have which colours, in the unit of the field. */
export interface ColourScale {
  /** Where the colours of what is allowed hand over to those beyond; `null` = the field has no limit. */
  readonly limit: number | null;
  /** Where the colours end. */
  readonly top: number;
  /** Largest value shown. */
  readonly largest: number;
}

/** Ends of the scale over the limit, within a power of ten. */
const ENDS = [1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10];

/** Colours that go on beyond the limit to a round multiple of it, at least 1.25, that holds the largest value. */
export function limitScale(limit: number, largest: number): ColourScale {
  const share = Math.max(1.25, largest / limit);
  const decade = 10 ** Math.floor(Math.log10(share) + 1e-9);
  const end = ENDS.find((lead) => lead * decade >= share * (1 - 1e-9)) ?? 10;
  return { limit, top: end * decade * limit, largest };
}

/** Colours that end at the largest value. */
export function plainScale(largest: number): ColourScale {
  return { limit: null, top: largest, largest };
}
