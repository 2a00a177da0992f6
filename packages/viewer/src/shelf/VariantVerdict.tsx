import type { HeadModel } from '@flathead/solver';
import { Icon } from '../app/icons.tsx';
import { limitDigits, marginDigits, micrometreDigits } from '../format/number.ts';
import styles from './shelf.module.css';
import { useFullAnswer, useNewestVerdict } from './use-shelf.ts';

const WORDS = { pass: 'Pass', marginal: 'Marginal', fail: 'Fail' } as const;

/** What a variant is worth: outcome, bow with its error against the limit, and what is left of it. */
export function VariantVerdict({ model, short = false }: { model: HeadModel; short?: boolean }) {
  const newest = useNewestVerdict(model);
  const answer = useFullAnswer(model);
  if (newest === null)
    return answer?.kind === 'refused' ? (
      <span className={styles.verdict} data-outcome="none" title={answer.fault.message}>
        No answer{short ? '' : `: ${answer.fault.message}`}
      </span>
    ) : (
      <span className={styles.verdict} data-outcome="none">
        Waits to be solved
      </span>
    );
  const { outcome, criteria } = newest.verdict;
  const stale = newest.stale || undefined;
  const bow = criteria.find(({ criterion }) => criterion === 'bow');
  return (
    <>
      <span className={styles.verdict} data-outcome={outcome} data-stale={stale} data-testid="variant-outcome">
        <Icon name={outcome} size={13} weight={2.2} />
        {WORDS[outcome]}
        {!short && bow && (
          <span className={styles.margin}>
            {marginDigits(bow.value, bow.limit)} µm {bow.value > bow.limit ? 'over' : 'left'}
          </span>
        )}
      </span>
      {bow && (
        <span className={styles.bow} data-stale={stale}>
          <b data-testid="variant-bow">{micrometreDigits(bow.value)}</b>
          {short ? '' : bow.error === null ? '' : ` ±${errorText(bow.error)}`} of {limitDigits(bow.limit)} µm
        </span>
      )}
    </>
  );
}

/** Numerical error, um, to a digit or two. */
function errorText(millimetres: number): string {
  const um = Math.abs(millimetres) * 1000;
  return um < 0.01 ? '<0.01' : um.toFixed(um >= 1 ? 1 : 2);
}
