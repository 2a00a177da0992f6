import type { CriterionVerdict } from '@flathead/solver';
import { limitDigits, micrometreDigits } from '../format/number.ts';
import styles from './budget.module.css';
import type { BudgetLine } from './budget-figures.ts';
import { Room } from './Room.tsx';

/** The bow of the verdict as a contributor; not known before the first full answer. */
export function BowRow({ bow, line }: { bow: CriterionVerdict | undefined; line: BudgetLine | undefined }) {
  return (
    <tr data-testid="budget-bow">
      <th scope="row">
        Bow
        {bow && (
          <small>
            {' '}
            of the verdict: site {bow.site}, case {bow.case}; limit of the head {limitDigits(bow.limit)} µm
          </small>
        )}
      </th>
      <td className={styles.number}>
        {bow === undefined ? '–' : micrometreDigits(bow.value)}
        {bow?.error ? <small> ±{(bow.error * 1000).toFixed(2)}</small> : null}
      </td>
      <td>systematic</td>
      <Room line={line} />
      <td />
    </tr>
  );
}
