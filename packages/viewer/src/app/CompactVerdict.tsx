import { CRITERION_NAMES, criterionDigits, criterionLimit, criterionUnit } from '../format/criterion-text.ts';
import { typeset } from '../format/number.ts';
import { OutcomeMark } from '../panels/OutcomeMark.tsx';
import { criterionStates } from '../state/criterion-states.ts';
import { useRun, useStaleness } from '../state/use-workbench.ts';
import styles from './compact-verdict.module.css';

const WHY = { solving: 'Solving the last edit', refused: 'Of the last good answer', draft: 'Of the last good answer' };

/** The verdict on one line, for pages that need their height. */
export function CompactVerdict() {
  const solved = useRun((run) => run.solved);
  const full = useRun((run) => run.full);
  const stale = useStaleness();
  if (solved === null)
    return (
      <p className={styles.line}>{stale === 'refused' ? 'This head could not be solved.' : 'Solving the head.'}</p>
    );
  const criteria = criterionStates({ solved, full });
  const { outcome, sentence } = solved.result.verdict;
  return (
    <section
      className={styles.line}
      aria-label="Verdict"
      data-testid="verdict-compact"
      data-quality={solved.quality}
      data-stale={stale ?? undefined}
    >
      <OutcomeMark outcome={outcome} soFar={criteria.some(({ state }) => state === 'kept' || state === 'awaited')} />
      <span className={styles.sentence}>{typeset(sentence)}</span>
      {stale !== null && <span className={styles.stale}>{WHY[stale]}</span>}
      <dl className={styles.criteria}>
        {criteria.map(({ kind, verdict }) =>
          verdict === null ? null : (
            <div key={kind} className={styles.criterion} data-outcome={verdict.outcome}>
              <dt>{CRITERION_NAMES[kind]}</dt>
              <dd>
                {criterionDigits(verdict.value, verdict)}
                <span className={styles.limit}>
                  {verdict.bound === 'most' ? ' of ' : ', min '}
                  {criterionLimit(verdict)} {criterionUnit(verdict)}
                </span>
              </dd>
            </div>
          ),
        )}
      </dl>
    </section>
  );
}
