import type { CriterionVerdict } from '@flathead/solver';
import { CRITERION_NAMES, criterionDigits, criterionLimit, criterionUnit } from '../format/criterion-text.ts';
import type { NumberRows } from '../format/number-rows.ts';

/** Each criterion with its error, limit and place. */
export function criterionRows(criteria: readonly CriterionVerdict[]): NumberRows {
  return {
    columns: ['Criterion', 'Value', 'Numerical error', 'Limit', 'Worst at', 'In case', 'Outcome'],
    rows: criteria.map((criterion) => {
      const { error, bound, site, mode, outcome } = criterion;
      const unit = criterionUnit(criterion);
      const withUnit = (digits: string) => `${digits} ${unit}`.trim();
      return [
        CRITERION_NAMES[criterion.criterion],
        withUnit(criterionDigits(criterion.value, criterion)),
        error === null ? 'not estimated' : `±${withUnit(errorDigits(error, criterion))}`,
        `${bound === 'most' ? 'at most' : 'at least'} ${withUnit(criterionLimit(criterion))}`,
        mode === undefined ? site : `${site}, ${mode}`,
        criterion.case,
        outcome,
      ];
    }),
  };
}

/** Below a hundredth of a micrometre, of a newton or of one an estimate says nothing. */
function errorDigits(error: number, criterion: CriterionVerdict): string {
  const least = criterion.unit === 'mm' ? 5e-6 : 0.005;
  if (criterion.criterion !== 'failureProbability' && Math.abs(error) < least) return '0.01';
  return criterionDigits(criterion.unit === 'mm' ? error : Number(error.toPrecision(2)), criterion);
}
