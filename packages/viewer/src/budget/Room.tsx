import { micrometreDigits } from '../format/number.ts';
import styles from './budget.module.css';
import type { BudgetLine } from './budget-figures.ts';

/** What a contributor may be while all others stay, and what that leaves of it. */
export function Room({ line }: { line: BudgetLine | undefined }) {
  if (line === undefined)
    return (
      <>
        <td className={styles.number}>–</td>
        <td className={styles.number}>–</td>
      </>
    );
  const { most, value } = line;
  if (most === null)
    return (
      <td colSpan={2} className={styles.full}>
        the others fill it
      </td>
    );
  const left = most - value;
  return (
    <>
      <td className={styles.number}>{micrometreDigits(most)}</td>
      <td className={left < 0 ? styles.over : styles.number}>
        {left < 0 ? '−' : ''}
        {micrometreDigits(left)}
      </td>
    </>
  );
}
