import type { AdvisedMove } from '@flathead/solver';
import { typeset } from '../format/number.ts';
import { shownAdvice, wantsAdvice } from '../state/shown-advice.ts';
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
  const wanted = useRun(({ solved }) => solved !== null && wantsAdvice(solved.result));
  // The room stays: a strip that grows or shrinks would move the stage under the pointer of a drag.
  if (advice === 'none') return wanted ? <div className={styles.advice} /> : null;
  return (
    <div className={styles.advice} data-testid="advice">
      {advice === 'awaited' ? (
        <p className={styles.adviceWait}>Trying what would help</p>
      ) : advice.moves.length === 0 ? (
        <p className={styles.adviceWait}>Neither fasteners further in nor 0.5&nbsp;mm more body helps.</p>
      ) : (
        advice.moves.map((move) => (
          <MoveLine
            key={move.kind}
            move={move}
            onTry={() => history.edit((now) => (now === model ? move.model : now))}
          />
        ))
      )}
    </div>
  );
}

function MoveLine({ move, onTry }: { move: AdvisedMove; onTry: () => void }) {
  const sentence = typeset(move.sentence);
  const end = sentence.lastIndexOf(' ') + 1;
  return (
    <p className={styles.adviceLine}>
      {sentence.slice(0, end)}
      <span className={styles.adviceEnd}>
        {sentence.slice(end)}{' '}
        <button
          type="button"
          className={styles.more}
          data-testid={`try-${move.kind}`}
          aria-label={`Try it: ${sentence}`}
          onClick={onTry}
        >
          Try it
        </button>
      </span>
    </p>
  );
}
