import { faultReport } from '@flathead/solver';
import { Button } from '@mantine/core';
import { useState } from 'react';
import { fileName } from '../app/file-name.ts';
import { PageDialog } from '../app/PageDialog.tsx';
import { saveText } from '../app/save-file.ts';
import { typeset } from '../format/number.ts';
import { shownCase } from '../state/shown-case.ts';
import { useModel, useRun, useView } from '../state/use-workbench.ts';
import styles from './exchange.module.css';
import { EXPORTS, type ExportForm } from './exports.ts';

/** Hands the head on the bench, or its answer, to the user in a form that other programs read. */
export function ExportDialog({ onClose }: { onClose: () => void }) {
  const model = useModel((now) => now);
  const full = useRun(({ full }) => (full?.model === model ? full : null));
  const caseName = useView((view) => view.caseName);
  const [trouble, setTrouble] = useState<string | null>(null);
  const shown = full === null ? undefined : shownCase(full.result, caseName).name;
  const save = async ({ ending, type, ofModel, ofAnswer }: ExportForm): Promise<void> => {
    setTrouble(null);
    try {
      const content = ofModel ? ofModel(model) : full && ofAnswer && (await ofAnswer(model, full.result, shown));
      if (content) saveText(`${fileName(model.name)}${ending}`, content, type);
    } catch (thrown) {
      setTrouble(faultReport(thrown).message);
    }
  };
  return (
    <PageDialog title="Export" testId="export" onClose={onClose}>
      <div className={styles.sheet}>
        <div className={styles.groups}>
          {EXPORTS.map(({ title, forms }) => (
            <section key={title} aria-label={title}>
              <h3>{title}</h3>
              {forms.map((form, i) => (
                <button
                  key={form.id}
                  type="button"
                  {...(title === EXPORTS[0].title && i === 0 ? { 'data-first': true } : {})}
                  className={styles.form}
                  disabled={form.ofAnswer !== undefined && full === null}
                  data-testid={`export-${form.id}`}
                  onClick={() => void save(form)}
                >
                  <b>{form.label}</b>
                  <span>{form.note}</span>
                </button>
              ))}
            </section>
          ))}
        </div>
        <p className={styles.quiet} role="status">
          {trouble !== null
            ? typeset(trouble)
            : full === null
              ? 'Results can be written as soon as the head is solved in full.'
              : `Fields, pictures and surfaces show the case "${shown}". Every file carries the version and the hash of the model.`}
        </p>
        <div className={styles.actions}>
          <Button variant="subtle" color="gray" onClick={onClose}>
            Close
          </Button>
        </div>
      </div>
    </PageDialog>
  );
}
