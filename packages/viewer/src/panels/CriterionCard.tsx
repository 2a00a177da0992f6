import type { CriterionVerdict } from '@flathead/solver';
import { Icon } from '../app/icons.tsx';
import { CriterionGauge } from '../charts/CriterionGauge.tsx';
import { amountDigits, fieldText, unitText } from '../format/number.ts';
import styles from './verdict.module.css';

const NAMES = {
  bow: 'Bow',
  flatness: 'Flatness',
  strength: 'Strength factor',
  failureProbability: 'Failure probability',
  fasteners: 'Fastener load',
  contact: 'Contact force',
} as const;

/** One criterion: value with its error, limit, what is left of it, and where it is worst. */
export function CriterionCard({ criterion }: { criterion: CriterionVerdict }) {
  const { criterion: kind, unit, bound, value, limit, error, outcome, site } = criterion;
  const beyond = bound === 'most' ? value - limit : limit - value;
  const limitText = fieldText(unit === 'mm' ? limit * 1000 : limit);
  return (
    <article className={styles.card} data-outcome={outcome} data-testid={`criterion-${kind}`}>
      <header className={styles.cardHead}>
        <h3 className={styles.cardTitle}>{NAMES[kind]}</h3>
        <span className={styles.where}>
          {site}, {criterion.case}
        </span>
      </header>
      <p className={styles.numbers}>
        <span className={styles.value} data-testid={`${kind}-value`}>
          {amountDigits(value, unit)}
        </span>
        <span className={styles.limit}>
          {error !== null && `±${errorDigits(error, unit)} `}
          {unitText(unit)} {bound === 'most' ? 'of' : 'of at least'} {limitText}
        </span>
        <span className={styles.margin}>
          <Icon name={outcome} size={13} weight={2.2} />
          {amountDigits(beyond, unit)} {beyond > 0 ? (bound === 'most' ? 'over' : 'short') : 'left'}
        </span>
      </p>
      <CriterionGauge criterion={criterion} />
    </article>
  );
}

/** An estimate of an error deserves one or two digits. */
function errorDigits(error: number, unit: CriterionVerdict['unit']): string {
  const size = Math.abs(error) * (unit === 'mm' ? 1000 : 1);
  if (size < 0.01) return '<0.01';
  return size.toFixed(size >= 1 ? 1 : 2);
}
