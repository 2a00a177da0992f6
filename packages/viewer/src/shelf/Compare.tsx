import { useMemo } from 'react';
import { Icon } from '../app/icons.tsx';
import { useView, useWorkbench } from '../state/use-workbench.ts';
import type { Variant } from '../state/workbook.ts';
import { Comparison } from './Comparison.tsx';
import styles from './compare.module.css';
import { useCompared, useFullAnswer } from './use-shelf.ts';

/** Two variants in full, over the stage, while asked for. */
export default function Compare() {
  const comparing = useView((view) => view.comparing);
  const pair = useCompared();
  return comparing && pair ? <Panel pair={pair} /> : null;
}

function Panel({ pair: [reference, other] }: { pair: readonly [Variant, Variant] }) {
  const { view } = useWorkbench();
  const [a, b] = [useFullAnswer(reference.model), useFullAnswer(other.model)];
  const heads = useMemo(
    () =>
      a?.kind === 'solved' && b?.kind === 'solved'
        ? ([
            { model: reference.model, result: a.result },
            { model: other.model, result: b.result },
          ] as const)
        : null,
    [a, b, reference.model, other.model],
  );
  const close = (): void => view.setState({ comparing: false });
  const refused = [a, b].find((answer) => answer?.kind === 'refused');
  return (
    <section
      className={styles.panel}
      aria-label="Comparison"
      data-testid="comparison"
      // Takes the focus as it opens, so that Escape closes it.
      tabIndex={-1}
      ref={(panel) => panel?.focus()}
      onKeyDown={(event) => {
        if (event.key === 'Escape') close();
      }}
    >
      <header className={styles.head}>
        <h2 className={styles.title}>
          {other.model.name} <span className={styles.none}>against</span> {reference.model.name}
        </h2>
        <button type="button" className={styles.small} aria-label="Close the comparison" onClick={close}>
          <Icon name="cross" size={15} />
        </button>
      </header>
      {heads ? (
        <Comparison reference={heads[0]} other={heads[1]} />
      ) : (
        <p className={styles.note} role="status">
          {refused?.kind === 'refused'
            ? `One of the two has no answer: ${refused.fault.message}`
            : 'Waits for the answers of both.'}
        </p>
      )}
    </section>
  );
}
