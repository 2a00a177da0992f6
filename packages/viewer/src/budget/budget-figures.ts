import {
  type BudgetSums,
  budgetSums,
  type CriterionVerdict,
  mostAllowed,
  type Outcome,
  type Share,
} from '@flathead/solver';
import { limitDigits, micrometreDigits } from '../format/number.ts';
import { parseNumber } from '../format/parse-number.ts';
import type { Budget } from './budget-store.ts';

/** Magnitudes, mm, as the command line takes them. */
const MOST = 1000;

/** A contributor with its value read. */
export interface BudgetLine extends Share {
  readonly name: string;
  /** It may be so much while all others stay, mm; null when the others alone are over. */
  readonly most: number | null;
}

export interface BudgetFigures {
  /** The bow first. */
  readonly lines: readonly BudgetLine[];
  /** mm */
  readonly limit: number;
  readonly sums: BudgetSums;
  /** Marginal within the numerical error of the bow. */
  readonly outcome: Outcome;
  /** Whether the sum fits only because independent contributors seldom meet at their worst. */
  readonly byChance: boolean;
}

/** A magnitude in um as typed, mm; null when it is none. */
export function readMicrometres(text: string): number | null {
  const um = parseNumber(text, 'µm');
  return um === null || um < 0 || um > MOST * 1000 ? null : Number((um / 1000).toPrecision(12));
}

/**
 * The budget of a head in figures.
 *
 * @param bow of its verdict, mm
 * @returns null while a value is no number
 */
export function budgetFigures(
  budget: Budget,
  bow: { readonly value: number; readonly error: number | null },
): BudgetFigures | null {
  const limit = readMicrometres(budget.limit);
  const shares: (Share & { readonly name: string })[] = [{ name: 'Bow', value: bow.value, adds: 'systematic' }];
  for (const { name, value, adds } of budget.contributors) {
    const read = readMicrometres(value);
    if (read === null) return null;
    shares.push({ name, value: read, adds });
  }
  if (limit === null || limit === 0) return null;
  const sums = budgetSums(shares);
  const [over, error] = [sums.total - limit, bow.error ?? 0];
  return {
    lines: shares.map((share, i) => ({ ...share, most: mostAllowed(shares, i, limit) })),
    limit,
    sums,
    outcome: over > error ? 'fail' : over > -error ? 'marginal' : 'pass',
    byChance: over <= 0 && sums.worstCase > limit,
  };
}

/** How the limit of the verdict on the bow and that of the budget go together, in one sentence. */
export function twoLimits(
  { value, limit, outcome }: Pick<CriterionVerdict, 'value' | 'limit' | 'outcome'>,
  budget: Outcome,
): string {
  const bow = `the bow alone, ${micrometreDigits(value)} of ${limitDigits(limit)} µm`;
  const [own, sum] = [outcome !== 'fail', budget !== 'fail'];
  if (own === sum)
    return `The verdict above judges ${bow}; the budget, all contributors together. ${own ? 'Both hold.' : 'Neither holds.'}`;
  return own
    ? `The verdict above passes ${bow}; the budget fails with all contributors together. Both must hold.`
    : `The verdict above fails ${bow}, even though the budget has room for it. Both must hold.`;
}
