import { Button, Textarea, TextInput } from '@mantine/core';
import { useEffect, useRef, useState } from 'react';
import { useStore } from 'zustand';
import { fileName } from '../app/file-name.ts';
import { Icon } from '../app/icons.tsx';
import { saveText } from '../app/save-file.ts';
import { bookRows } from '../checks/check-text.ts';
import { checkRuns } from '../checks/runs-here.ts';
import { leavingStorage } from '../keeping/storage.ts';
import { useModel, useRun, useStaleness } from '../state/use-workbench.ts';
import { ReportDocument } from './ReportDocument.tsx';
import './report.css';
import { createFieldStore, fieldsOf, type ReportFields, writeField } from './report-fields.ts';
import styles from './report-page.module.css';
import { standaloneHtml } from './save-html.ts';

const fieldStore = createFieldStore(leavingStorage());

const FIELDS: readonly (readonly [keyof ReportFields, string])[] = [
  ['project', 'Project'],
  ['author', 'Author'],
  ['checked', 'Checked by'],
  ['approved', 'Approved by'],
  ['revision', 'Revision'],
];

/** The report of the last full answer, to print or to keep as a file. */
export function ReportPage() {
  const full = useRun((run) => run.full);
  const model = useModel((state) => state);
  const stale = useStaleness();
  const sheet = useRef<HTMLDivElement>(null);
  const [date] = useState(() => new Date().toISOString().slice(0, 10));
  const fields = fieldsOf(useStore(fieldStore), model.name);
  const { cases, rows } = useStore(checkRuns.store);
  useEffect(() => checkRuns.open(), []);
  const behind = full?.model !== model;
  const waiting = behind && stale !== 'refused';
  const saveHtml = (): void => {
    const report = sheet.current?.querySelector<HTMLElement>('.report');
    if (!report || full === null) return;
    const html = standaloneHtml(report, `${full.model.name}: planarity report`);
    saveText(`${fileName(full.model.name)}-report.html`, html, 'text/html');
  };
  return (
    <div className={styles.page}>
      <form className={styles.tools} onSubmit={(event) => event.preventDefault()}>
        {FIELDS.map(([field, label]) => (
          <TextInput
            key={field}
            size="xs"
            label={label}
            className={styles.field}
            maxLength={120}
            data-testid={`report-${field}`}
            value={fields[field]}
            onChange={(event) => writeField(fieldStore, model.name, field, event.currentTarget.value)}
          />
        ))}
        <Textarea
          size="xs"
          label="Note"
          className={styles.note}
          autosize={false}
          rows={1}
          maxLength={2000}
          data-testid="report-note"
          value={fields.note}
          onChange={(event) => writeField(fieldStore, model.name, 'note', event.currentTarget.value)}
        />
        <Button
          size="xs"
          leftSection={<Icon name="print" size={16} />}
          disabled={full === null || waiting}
          data-testid="print"
          onClick={() => window.print()}
        >
          Print or save as PDF
        </Button>
        <Button
          size="xs"
          variant="default"
          leftSection={<Icon name="save" size={16} />}
          disabled={full === null || waiting}
          data-testid="save-html"
          onClick={saveHtml}
        >
          Save as HTML
        </Button>
      </form>
      {full === null ? (
        <p className={styles.state} role="status">
          {stale === 'refused'
            ? 'There is no report: this head could not be solved. The bench says why.'
            : 'The report follows with the first full answer.'}
        </p>
      ) : (
        <>
          {(waiting || stale !== null) && (
            <p className={styles.state} role="status" data-testid="report-state">
              {waiting
                ? 'The head has changed and is being solved: its report follows.'
                : 'A change on the bench has no answer yet. This report is of the last head that has.'}
            </p>
          )}
          <div ref={sheet} className={styles.sheet} data-waiting={waiting || undefined}>
            <ReportDocument
              model={full.model}
              result={full.result}
              fields={fields}
              date={date}
              book={cases === null ? null : bookRows(cases, rows)}
              outdated={behind || stale !== null}
            />
          </div>
        </>
      )}
    </div>
  );
}
