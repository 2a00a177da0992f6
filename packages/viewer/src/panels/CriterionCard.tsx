import type { CriterionVerdict } from '@flathead/solver';
import { Icon } from '../app/icons.tsx';
import { CriterionGauge } from '../charts/CriterionGauge.tsx';
import { CRITERION_NAMES, criterionDigits, criterionLimit, criterionUnit } from '../format/criterion-text.ts';
import { fieldText, marginDigits } from '../format/number.ts';
import styles from './verdict.module.css';

const MODES: Readonly<Record<string, string>> = { proof: 'proof load', stripping: 'thread', clamp: 'clamp force lost' };

/**
 * One criterion: value with its error, limit, what is left of it, and where it is worst.
 *
 * @param stale it is that of an answer before the one shown
 */
export function CriterionCard({ criterion, stale = false }: { criterion: CriterionVerdict; stale?: boolean }) {
  const { criterion: kind, bound, value, limit, error, outcome, site, mode, bracket } = criterion;
  const beyond = bound === 'most' ? value - limit : limit - value;
  const digits = (amount: number) => criterionDigits(amount, criterion);
  const unit = criterionUnit(criterion);
  const spread = [...(error === null ? [] : [`±${errorDigits(error, criterion)}`]), unit].join(' ').trim();
  const where = [...(mode === undefined ? [] : [MODES[mode] ?? mode]), site, criterion.case].join(', ');
  return (
    <article
      className={styles.card}
      data-outcome={outcome}
      data-stale={stale || undefined}
      data-testid={`criterion-${kind}`}
    >
      <header className={styles.cardHead}>
        <h3 className={styles.cardTitle}>{CRITERION_NAMES[kind]}</h3>
        <span className={styles.where} title={where}>
          {stale ? 'being judged again' : where}
        </span>
      </header>
      <p className={styles.numbers}>
        <span className={styles.value} data-testid={`${kind}-value`}>
          {digits(value)}
        </span>
        <span className={styles.limit}>
          {spread}
          {bound === 'most' ? ' of ' : ', min '}
          {criterionLimit(criterion)}
        </span>
        <span className={styles.margin}>
          <Icon name={outcome} size={13} weight={2.2} />
          {kind === 'failureProbability'
            ? beyond > 0
              ? 'over'
              : 'inside'
            : `${marginText(criterion)} ${beyond > 0 ? (bound === 'most' ? 'over' : 'short') : 'left'}`}
        </span>
      </p>
      <CriterionGauge criterion={criterion} />
      {bracket !== null && (
        <p className={styles.bracket} data-testid={`${kind}-bracket`}>
          Frame sliding {digits(bracket.sliding)}, bonded {digits(bracket.bonded)} {unit}
        </p>
      )}
    </article>
  );
}

/** What is left or lacking is told to two figures where it is no length. */
function marginText(criterion: CriterionVerdict): string {
  const { value, limit, unit } = criterion;
  return unit === 'mm'
    ? marginDigits(value, limit)
    : criterionDigits(Number((value - limit).toPrecision(2)), criterion);
}

/** An estimate of an error deserves one or two digits. */
function errorDigits(error: number, criterion: CriterionVerdict): string {
  if (criterion.criterion === 'failureProbability') return criterionDigits(error, criterion);
  const scale = { mm: 1000, N: 1, '1': criterion.criterion === 'fasteners' ? 100 : 1 }[criterion.unit];
  const size = Math.abs(error) * scale;
  if (criterion.unit === 'N' && size < 0.01) return fieldText(Number(size.toPrecision(1)));
  if (size < 0.01) return '<0.01';
  return size.toFixed(size >= 1 ? 1 : 2);
}
