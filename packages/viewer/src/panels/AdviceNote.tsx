import { typeset } from '../format/number.ts';
import { shownAdvice } from '../state/shown-advice.ts';
import { useModel, useRun, useWorkbench } from '../state/use-workbench.ts';
import styles from './verdict.module.css';

/**
 * What would bring a head nearer to its limit, and a button that does it. Its line is kept free while that is found out,
 * so that nothing moves when it comes.
 */
export function AdviceNote() {
  const { history } = useWorkbench();
  const model = useModel((model) => model);
  const advice = useRun((run) => shownAdvice(run, model));
  if (advice === 'none') return null;
  return (
    <div className={styles.advice} data-testid="advice">
      {advice === 'awaited' ? (
        <p className={styles.adviceWait}>Trying what would help</p>
      ) : advice.moves.length === 0 ? (
        <p className={styles.adviceWait}>Neither fasteners further in nor 0.5 mm more body helps.</p>
      ) : (
        advice.moves.map(({ kind, sentence, model: changed }) => (
          <p key={kind} className={styles.adviceLine}>
            {typeset(sentence)}{' '}
            <button
              type="button"
              className={styles.more}
              data-testid={`try-${kind}`}
              aria-label={`Try it: ${typeset(sentence)}`}
              onClick={() => history.edit((now) => (now === model ? changed : now))}
            >
              Try it
            </button>
          </p>
        ))
      )}
    </div>
  );
}
