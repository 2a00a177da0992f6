import type { CriterionVerdict, Verdict } from '@flathead/solver';
import { Icon } from '../app/icons.tsx';
import { CRITERION_NAMES, criterionDigits, criterionLimit, criterionUnit } from '../format/criterion-text.ts';
import { levelDecimals } from '../state/waterfall.ts';
import styles from './compare.module.css';

/** The criteria of two heads beside each other. */
export function CriteriaTable({
  names,
  verdicts,
}: {
  names: readonly [string, string];
  verdicts: readonly [Verdict, Verdict];
}) {
  const [a, b] = verdicts.map(({ criteria }) => new Map(criteria.map((criterion) => [criterion.criterion, criterion])));
  const kinds = [...new Set([...a.keys(), ...b.keys()])];
  return (
    <table className={styles.table} data-testid="comparison-criteria">
      <thead>
        <tr>
          <th scope="col">Criterion</th>
          <th scope="col">{names[0]}</th>
          <th scope="col">{names[1]}</th>
          <th scope="col">Difference</th>
        </tr>
      </thead>
      <tbody>
        {kinds.map((kind) => {
          const [x, y] = [a.get(kind), b.get(kind)];
          return (
            <tr key={kind}>
              <th scope="row">{CRITERION_NAMES[kind]}</th>
              <Cell criterion={x} />
              <Cell criterion={y} />
              <td>{x && y ? differenceOf(x, y) : ''}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

function Cell({ criterion }: { criterion: CriterionVerdict | undefined }) {
  if (criterion === undefined) return <td className={styles.none}>not judged</td>;
  const { value, error, bound, outcome } = criterion;
  return (
    <td data-outcome={outcome}>
      <Icon name={outcome} size={12} weight={2.2} /> {criterionDigits(value, criterion)}
      {error === null ? '' : ` ±${criterionDigits(error, criterion)}`} {criterionUnit(criterion)}
      <span className={styles.none}>
        {bound === 'most' ? ' of ' : ', min '}
        {criterionLimit(criterion)}
      </span>
    </td>
  );
}

/** A length as the difference of the two values shown, so that the row adds up. */
function differenceOf(from: CriterionVerdict, to: CriterionVerdict): string {
  const decimals = levelDecimals([1000 * from.value, 1000 * to.value]);
  const shown = ({ value }: CriterionVerdict): number => Number((1000 * value).toFixed(decimals));
  const amount =
    to.unit === 'mm' ? Math.abs(shown(to) - shown(from)).toFixed(decimals) : criterionDigits(to.value - from.value, to);
  return `${to.value < from.value ? '−' : '+'}${amount} ${criterionUnit(to)}`.trim();
}
