/** One thing that uses up planarity. */
export interface Share {
  /** Magnitude, mm. */
  readonly value: number;
  readonly adds: 'systematic' | 'independent';
}

/** Contributors added up, mm. */
export interface BudgetSums {
  /** Sum of the systematic ones. */
  readonly systematic: number;
  /** Root of the sum of squares of the independent ones. */
  readonly independent: number;
  /** Systematic plus independent: what is compared with the limit. */
  readonly total: number;
  /** Sum of all: as bad as it can get. */
  readonly worstCase: number;
}

/** `S + sqrt(sum of r_i^2)`, and `S + sum of r_i` beside it (common practice, no source). */
export function budgetSums(shares: readonly Share[]): BudgetSums {
  const values = (kind: Share['adds']): number[] =>
    shares.filter(({ adds }) => adds === kind).map(({ value }) => value);
  const systematic = values('systematic').reduce((sum, value) => sum + value, 0);
  const independent = Math.hypot(...values('independent'));
  return {
    systematic,
    independent,
    total: systematic + independent,
    worstCase: systematic + values('independent').reduce((sum, value) => sum + value, 0),
  };
}

/**
 * Largest value that a contributor may have while all others stay: `L - S' - sqrt(R')` of the others for a systematic one,
 * `sqrt((L - S)^2 - R')` for an independent one.
 *
 * @returns null when the others alone are over the limit
 */
export function mostAllowed(shares: readonly Share[], index: number, limit: number): number | null {
  const { systematic, independent, total } = budgetSums(shares.filter((_, i) => i !== index));
  if (total > limit) return null;
  if (shares[index].adds === 'systematic') return limit - total;
  return Math.sqrt((limit - systematic) ** 2 - independent ** 2);
}
