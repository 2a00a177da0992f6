import type { CriterionVerdict } from '@flathead/solver';
import { Icon } from '../app/icons.tsx';
import { CriterionGauge } from '../charts/CriterionGauge.tsx';
import { fieldText, micrometreDigits } from '../format/number.ts';
import styles from './verdict.module.css';

const NAMES = { bow: 'Bow', flatness: 'Flatness' } as const;

/** One criterion: value with its error, limit, what is left of it, and where it is worst. */
export function CriterionCard({ criterion }: { criterion: CriterionVerdict }) {
  const { criterion: kind, value, limit, error, outcome, site } = criterion;
  const over = value > limit;
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
          {micrometreDigits(value)}
        </span>
        <span className={styles.limit}>
          {error !== null && `±${errorDigits(error)} `}µm of {fieldText(limit * 1000)}
        </span>
        <span className={styles.margin}>
          <Icon name={outcome} size={13} weight={2.2} />
          {micrometreDigits(value - limit)} {over ? 'over' : 'left'}
        </span>
      </p>
      <CriterionGauge criterion={criterion} />
    </article>
  );
}

/** An estimate of an error deserves one or two digits. */
function errorDigits(error: number): string {
  const um = Math.abs(error) * 1000;
  if (um < 0.01) return '<0.01';
  return um.toFixed(um >= 1 ? 1 : 2);
}
