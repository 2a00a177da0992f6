import type { AdvisedMove } from '@flathead/solver';
import { useEffect, useState } from 'react';
import { useStore } from 'zustand';
import { typeset } from '../format/number.ts';
import { shownAdvice, wantsAdvice } from '../state/shown-advice.ts';
import { useLast } from '../state/use-last.ts';
import { useModel, usePointer, useRun, useWorkbench } from '../state/use-workbench.ts';
import styles from './advice.module.css';

/** Moves in sight; the others are one click away. */
const IN_SIGHT = 2;

/**
 * What would bring a head nearer to its limit, the best first, each with a button that does it. Its lines are kept free
 * while that is found out, and once a head has passed until another is on the bench: a strip that grows or shrinks would move
 * the stage under the pointer.
 */
export function AdviceNote() {
  const { history, head } = useWorkbench();
  const bench = useStore(head, ({ book }) => book.bench);
  const model = useModel((model) => model);
  const advice = useRun((run) => shownAdvice(run, model));
  const dragging = usePointer(({ dragged }) => dragged !== null);
  const wanted = useRun(({ solved, full }) => {
    const judged = dragging ? full : solved;
    return judged !== null && wantsAdvice(judged.result);
  });
  const roomOf = useLast(wanted ? bench : null);
  const [open, setOpen] = useState(false);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another head, other advice
  useEffect(() => setOpen(false), [model]);
  if (roomOf !== bench) return null;
  if (!wanted || advice === 'none') return <div className={styles.advice} />;
  if (advice === 'awaited')
    return (
      <div className={styles.advice} data-testid="advice">
        <p className={styles.wait}>Looking for fixes</p>
      </div>
    );
  const { moves, conclusion } = advice;
  const line = (move: AdvisedMove) => (
    <MoveLine key={move.kind} move={move} onTry={() => history.edit((now) => (now === model ? move.model : now))} />
  );
  const more = moves.length > IN_SIGHT || (moves.length > 0 && conclusion !== null);
  return (
    <div className={styles.advice} data-testid="advice">
      {moves.length === 0 && <p className={styles.none}>{typeset(conclusion ?? '')}</p>}
      <ul className={styles.lines}>{moves.slice(0, IN_SIGHT).map(line)}</ul>
      {more && (
        <button
          type="button"
          className={styles.more}
          aria-expanded={open}
          data-testid="advice-all"
          onClick={() => setOpen(!open)}
          onKeyDown={({ key }) => key === 'Escape' && setOpen(false)}
        >
          {moves.length > IN_SIGHT ? `All ${moves.length} fixes` : 'More on this'}
        </button>
      )}
      {more && open && (
        <div className={styles.all} data-testid="advice-list">
          <ul className={styles.lines}>{moves.map(line)}</ul>
          {conclusion !== null && <p className={styles.none}>{typeset(conclusion)}</p>}
          <p className={styles.wait}>
            Each was solved, not estimated, and judged by bow and flatness alone; try it to have stress judged.
          </p>
        </div>
      )}
    </div>
  );
}

function MoveLine({ move, onTry }: { move: AdvisedMove; onTry: () => void }) {
  const sentence = typeset(move.sentence);
  return (
    <li className={styles.line} data-within={move.within || undefined}>
      <span title={sentence}>{sentence}</span>
      <button
        type="button"
        className={styles.try}
        data-testid={`try-${move.kind}`}
        aria-label={`Try it: ${sentence}`}
        onClick={onTry}
      >
        Try it
      </button>
    </li>
  );
}
