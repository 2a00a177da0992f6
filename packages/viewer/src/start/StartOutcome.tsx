import type { HeadModel } from '@flathead/solver';
import { Button } from '@mantine/core';
import { Icon } from '../app/icons.tsx';
import { typeset } from '../format/number.ts';
import { headInWords } from './head-in-words.ts';
import { StartPlan } from './StartPlan.tsx';
import styles from './start.module.css';

interface StartOutcomeProps {
  /** The head that is drawn: pale while the answers give none. */
  readonly drawn: HeadModel | null;
  readonly model: HeadModel | null;
  readonly refusal: string | null;
  make(): void;
  cancel(): void;
}

/** The head that follows from the answers, or why none does; and the way on. */
export function StartOutcome({ drawn, model, refusal, make, cancel }: StartOutcomeProps) {
  return (
    <section className={styles.outcome} aria-label="The head that follows">
      {drawn ? (
        <div className={styles.drawn} data-old={model === null || undefined}>
          <StartPlan model={drawn} />
        </div>
      ) : (
        <div className={styles.plan} />
      )}
      {model && (
        <p className={styles.summary} role="status">
          {headInWords(model)}
        </p>
      )}
      <p className={styles.hint}>
        Body, frame and screws are placed around the sites with room for each. It is a place to start from: move and
        size everything on the bench.
      </p>
      <p
        id="start-refusal"
        className={styles.refusal}
        role="status"
        data-testid="start-refusal"
        hidden={refusal === null}
      >
        {refusal !== null && <Icon name="fail" size={15} />}
        <span>{typeset(refusal ?? '')}</span>
      </p>
      <div className={styles.actions}>
        <Button variant="subtle" color="gray" onClick={cancel}>
          Cancel
        </Button>
        <Button
          data-testid="start-make"
          data-disabled={refusal !== null}
          aria-disabled={refusal !== null}
          aria-describedby={refusal === null ? undefined : 'start-refusal'}
          onClick={make}
        >
          Make this head
        </Button>
      </div>
    </section>
  );
}
