import type { CriterionVerdict } from '@flathead/solver';
import { amountDigits, exponentText, fieldText, limitDigits, probabilityDigits, unitText } from './number.ts';

/** What the page calls each criterion. */
export const CRITERION_NAMES = {
  bow: 'Bow',
  flatness: 'Flatness',
  strength: 'Strength factor',
  failureProbability: 'Failure probability',
  fasteners: 'Fastener use',
  contact: 'Contact force',
} as const;

type Kind = Pick<CriterionVerdict, 'criterion' | 'unit'>;

/** Digits of an amount of a criterion, without sign: probabilities by powers of ten, shares of a fastener in per cent. */
export function criterionDigits(amount: number, { criterion, unit }: Kind): string {
  const size = Math.abs(amount);
  if (criterion === 'failureProbability') return probabilityDigits(size);
  if (criterion === 'fasteners') return (100 * size).toFixed(size >= 0.1 ? 0 : 1);
  return amountDigits(size, unit);
}

export function criterionUnit({ criterion, unit }: Kind): string {
  return criterion === 'fasteners' ? '%' : unitText(unit);
}

/** The limit of a criterion, as the sentence of the verdict writes it. */
export function criterionLimit({ criterion, unit, limit }: Kind & Pick<CriterionVerdict, 'limit'>): string {
  if (criterion === 'failureProbability') return exponentText(limit).replace('-', '\u2212');
  if (criterion === 'fasteners') return fieldText(limit * 100);
  return unit === 'mm' ? limitDigits(limit) : fieldText(limit);
}
