import type { HeadModel, StudyName } from '@flathead/solver';
import { Button } from '@mantine/core';
import { type ComponentType, useState } from 'react';
import { useStore } from 'zustand';
import page from '../app/page.module.css';
import { useModel, useWorkbench } from '../state/use-workbench.ts';
import { PlacementSetup } from './PlacementSetup.tsx';
import { defaultSetup, planOf } from './plans.ts';
import { studyRuns, yieldToBench } from './runs-here.ts';
import type { Fields } from './SetupFields.tsx';
import { SitesSetup } from './SitesSetup.tsx';
import { StudyOutcome } from './StudyOutcome.tsx';
import { SweepSetup } from './SweepSetup.tsx';
import { setupStore, type, typedOf } from './setup-store.ts';
import styles from './studies.module.css';
import { isBusy } from './study-record.ts';
import { ToleranceSetup } from './ToleranceSetup.tsx';

const STUDIES: readonly {
  readonly study: StudyName;
  readonly label: string;
  readonly question: string;
  readonly Setup: ComponentType<{ fields: Fields }>;
}[] = [
  { study: 'placement', label: 'Placement', question: 'Where should the fasteners be?', Setup: PlacementSetup },
  { study: 'sweep', label: 'Sweep', question: 'How much of it is enough?', Setup: SweepSetup },
  { study: 'tolerance', label: 'Tolerances', question: 'What if the parts are off?', Setup: ToleranceSetup },
  { study: 'sites', label: 'Site patterns', question: 'Dense or sparse?', Setup: SitesSetup },
];

/** Studies of the head on the bench: set up on the left, what came out on the right. */
export function StudiesPage() {
  const workbench = useWorkbench();
  const model = useModel((model) => model);
  const setups = useStore(setupStore);
  const { records } = useStore(studyRuns.store);
  const { study } = setups;
  const chosen = STUDIES.find((one) => one.study === study) ?? STUDIES[0];
  const { fields, plan, planned } = useFields(study, model);
  const busy = Object.values(records).find(isBusy);
  const record = records[study];
  const run = (): void => {
    const built = plan();
    if (built === null) return;
    yieldToBench(workbench);
    studyRuns.run(study, model, built);
  };
  return (
    <div className={styles.page}>
      <h1 className={styles.title}>Studies</h1>
      <fieldset className={styles.picker}>
        <legend className={page.spoken}>Study</legend>
        {STUDIES.map(({ study: one, label, question }) => (
          <label key={one} className={styles.pick} data-chosen={one === study || undefined}>
            <input
              type="radio"
              name="study"
              data-testid={`study-${one}`}
              checked={one === study}
              onChange={() => setupStore.setState({ study: one })}
            />
            <b>{label}</b>
            <span>{question}</span>
            {isBusy(records[one]) && <i className={styles.runs}>runs</i>}
          </label>
        ))}
      </fieldset>
      <div className={styles.columns}>
        <form
          className={styles.setup}
          aria-label={`Set up: ${chosen.label}`}
          onSubmit={(event) => {
            event.preventDefault();
            run();
          }}
        >
          <p className={styles.of}>
            For <b>{model.name}</b>
          </p>
          <chosen.Setup fields={fields} />
          {isBusy(record) ? (
            <Button size="xs" variant="default" data-testid="study-cancel" onClick={() => studyRuns.stop()}>
              Cancel
            </Button>
          ) : (
            <Button size="xs" type="submit" data-testid="study-run">
              {busy === undefined ? 'Run' : 'Run instead of what runs now'}
            </Button>
          )}
        </form>
        <section className={styles.outcome} aria-label="What came out">
          <StudyOutcome study={study} plan={planned} />
        </section>
      </div>
    </div>
  );
}

/** The fields of a study with its defaults for a head, and the plan that they make. */
function useFields(study: StudyName, model: HeadModel) {
  const typed = useStore(setupStore, (state) => typedOf(state, study, model.name));
  const [wrong, setWrong] = useState<{ readonly of: object; readonly trouble: Readonly<Record<string, string>> }>();
  const setup = { ...defaultSetup(study, model), ...typed };
  const fields: Fields = {
    text: (field) => setup[field] ?? '',
    trouble: (field) => (wrong?.of === typed ? (wrong.trouble[field] ?? null) : null),
    type: (field, text) => type(study, model.name, field, text),
  };
  const built = planOf(study, setup, model);
  const plan = (): Readonly<Record<string, unknown>> | null => {
    if (built.ok) return built.plan;
    setWrong({ of: typed, trouble: built.trouble });
    return null;
  };
  return { fields, plan, planned: built.ok ? built.plan : null };
}
