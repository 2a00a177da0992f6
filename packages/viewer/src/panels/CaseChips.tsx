import { NativeSelect } from '@mantine/core';
import { micrometreDigits } from '../format/number.ts';
import { caseGroups } from '../state/case-groups.ts';
import { shownCase } from '../state/shown-case.ts';
import { useRun, useView, useWorkbench } from '../state/use-workbench.ts';
import styles from './verdict.module.css';

/** The load cases with their bow; the chosen one is on the stage. Those over a wafer are one chip with a list. */
export function CaseChips() {
  const { view } = useWorkbench();
  const result = useRun(({ solved }) => solved?.result);
  const chosen = useView(({ caseName }) => caseName);
  if (!result) return null;
  const shown = shownCase(result, chosen).name;
  const kept = shown === chosen ? chosen : null;
  const choose = (caseName: string | null) => view.setState({ caseName });
  return (
    <fieldset className={styles.chips} aria-label="Load case on the stage">
      <button type="button" className={styles.chip} aria-pressed={kept === null} onClick={() => choose(null)}>
        Worst case
      </button>
      {caseGroups(result.cases).map(({ name, cases }) => {
        const pressed = cases.some((other) => other.name === kept);
        const several = cases.length > 1;
        return (
          <span key={name} className={styles.group}>
            <button
              type="button"
              className={styles.chip}
              data-testid={`case-${name}`}
              aria-pressed={pressed}
              data-shown={cases.some((other) => other.name === shown) || undefined}
              onClick={() => choose(cases[0].name)}
            >
              {name}
              {several && <span className={styles.chipCount}> {cases.length} touchdowns</span>}{' '}
              <span className={styles.chipValue}>{micrometreDigits(cases[0].bow.value)}</span>
            </button>
            {several && pressed && (
              <NativeSelect
                size="xs"
                className={styles.member}
                aria-label={`Touchdown of ${name}`}
                data-testid={`touchdowns-${name}`}
                data={cases.map((other) => ({
                  value: other.name,
                  label: `${other.name.slice(name.length + 2)}: ${micrometreDigits(other.bow.value)} µm`,
                }))}
                value={kept ?? ''}
                onChange={(event) => choose(event.currentTarget.value)}
              />
            )}
          </span>
        );
      })}
    </fieldset>
  );
}
