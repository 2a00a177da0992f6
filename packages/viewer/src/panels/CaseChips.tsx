import { micrometreDigits } from '../format/number.ts';
import { shownCase } from '../state/shown-case.ts';
import { useRun, useView, useWorkbench } from '../state/use-workbench.ts';
import styles from './verdict.module.css';

/** The load cases with their bow; the chosen one is on the stage. */
export function CaseChips() {
  const { view } = useWorkbench();
  const result = useRun(({ solved }) => solved?.result);
  const chosen = useView(({ caseName }) => caseName);
  if (!result) return null;
  const worst = shownCase(result, null).name;
  const kept = result.cases.some(({ name }) => name === chosen) ? chosen : null;
  return (
    <fieldset className={styles.chips} aria-label="Load case on the stage">
      <button
        type="button"
        className={styles.chip}
        aria-pressed={kept === null}
        onClick={() => view.setState({ caseName: null })}
      >
        Worst case
      </button>
      {result.cases.map(({ name, bow }) => (
        <button
          key={name}
          type="button"
          className={styles.chip}
          data-testid={`case-${name}`}
          aria-pressed={kept === name}
          data-shown={(kept ?? worst) === name || undefined}
          onClick={() => view.setState({ caseName: name })}
        >
          {name} <span className={styles.chipValue}>{micrometreDigits(bow.value)}</span>
        </button>
      ))}
    </fieldset>
  );
}
