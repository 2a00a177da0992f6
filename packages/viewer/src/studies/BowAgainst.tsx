import type { HeadModel } from '@flathead/solver';
import { useStore } from 'zustand';
import { limitDigits, micrometreDigits } from '../format/number.ts';
import { answerOf } from '../state/answer-store.ts';
import { useWorkbench } from '../state/use-workbench.ts';
import styles from './studies.module.css';

/** The bow of the head as it was, as placed, and the limit. */
export function BowAgainst({ model, bow }: { model: HeadModel; bow: number | null }) {
  const answer = useStore(useWorkbench().answers, (state) => answerOf(state, model));
  const before =
    answer?.kind === 'solved' ? answer.result.verdict.criteria.find(({ criterion }) => criterion === 'bow') : undefined;
  return (
    <dl className={styles.figures}>
      {before !== undefined && (
        <div>
          <dt>As it was</dt>
          <dd>{micrometreDigits(before.value)} µm</dd>
        </div>
      )}
      {bow !== null && (
        <div>
          <dt>As placed</dt>
          <dd data-testid="placement-bow">{micrometreDigits(bow)} µm</dd>
        </div>
      )}
      <div>
        <dt>Limit</dt>
        <dd>{limitDigits(model.limits.bow)} µm</dd>
      </div>
    </dl>
  );
}
