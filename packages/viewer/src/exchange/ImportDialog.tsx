import { type FaultReport, faultReport, type HeadModel } from '@flathead/solver';
import { fileKind, headFlaw, type ReadFile, type Taken } from '@flathead/solver/exchange';
import { Button } from '@mantine/core';
import { type ChangeEvent, useMemo, useState } from 'react';
import { PageDialog } from '../app/PageDialog.tsx';
import { typeset } from '../format/number.ts';
import { notify } from '../state/notice-store.ts';
import { useModel, useWorkbench } from '../state/use-workbench.ts';
import styles from './exchange.module.css';
import { PreviewTable } from './PreviewTable.tsx';
import { ReadingChoices } from './ReadingChoices.tsx';
import { type Choices, FIRST_CHOICES, readAs } from './readings.ts';

/** How a list of probes begins. */
const SAMPLE = ['site;x mm;y mm;force N', 'A1;-1,25;0,40;0,09', 'A1;-1,05;0,40;0,09'].join('\n');
/** Longest file that is read, MB: a list of a hundred thousand probes has some three. */
const MOST_MEGABYTES = 20;

interface Outcome {
  readonly read: ReadFile | null;
  readonly taken: Taken<HeadModel> | null;
  readonly fault: FaultReport | null;
  /** What keeps the head from being solved with it. */
  readonly flaw: FaultReport | null;
}

/** Reads a file of another program, shows what was read and what was left out, and takes it into the head when told to. */
export function ImportDialog({ onClose }: { onClose: () => void }) {
  const { history, notices } = useWorkbench();
  const model = useModel((now) => now);
  const [file, setFile] = useState<{ readonly name: string; readonly content: Uint8Array } | null>(null);
  const [tooLarge, setTooLarge] = useState<string | null>(null);
  const [choices, setChoices] = useState(FIRST_CHOICES);
  const choose = (change: Partial<Choices>): void => setChoices((now) => ({ ...now, ...change }));
  const outcome = useMemo(
    () => (file === null ? null : outcomeOf(file.content, choices, model)),
    [file, choices, model],
  );

  const open = async (event: ChangeEvent<HTMLInputElement>): Promise<void> => {
    const chosen = event.currentTarget.files?.[0];
    if (chosen === undefined) return;
    const large = chosen.size > MOST_MEGABYTES * 1e6;
    setTooLarge(
      large ? `${chosen.name} has ${(chosen.size / 1e6).toFixed(0)} MB; at most ${MOST_MEGABYTES} are read.` : null,
    );
    if (large) {
      setFile(null);
      return;
    }
    const content = new Uint8Array(await chosen.arrayBuffer());
    setChoices({ ...FIRST_CHOICES, kind: fileKind(chosen.name) });
    setFile({ name: chosen.name, content });
  };
  const take = (): void => {
    if (!outcome?.taken) return;
    const { model: next, notes } = outcome.taken;
    history.edit(() => next);
    notify(notices, {
      tone: 'info',
      title: `${file?.name} is in the head`,
      text: [...notes, 'One step of undo takes it out again.'].join(' '),
    });
    onClose();
  };

  return (
    <PageDialog title="Import a file" testId="import" onClose={onClose}>
      <div className={styles.sheet}>
        <div className={styles.choices}>
          <label className={styles.file}>
            <span>File (CSV, TSV, XLSX, DXF, SVG)</span>
            <input
              data-first
              type="file"
              accept=".csv,.tsv,.txt,.xlsx,.xlsm,.dxf,.svg"
              data-testid="import-file"
              onChange={(event) => void open(event)}
            />
          </label>
          <ReadingChoices content={file?.content ?? null} choices={choices} choose={choose} />
        </div>
        <section className={styles.preview} aria-label="What was read" aria-live="polite">
          {outcome === null && tooLarge === null && (
            <>
              <p className={styles.quiet}>
                Choose a file. What is read and what is left out shows here; the head stays as it is until you take it.
              </p>
              <p className={styles.quiet}>
                A list has a title for each column, in any order, and a line for each probe:
              </p>
              <pre className={styles.sample}>{SAMPLE}</pre>
            </>
          )}
          {tooLarge !== null && <p role="alert">{tooLarge}</p>}
          {outcome?.read && <PreviewTable preview={outcome.read.preview} />}
          {outcome?.taken?.notes.map((note) => (
            <p key={note}>{typeset(note)}</p>
          ))}
          {outcome?.fault && (
            <p role="alert" className={styles.trouble} data-testid="import-fault">
              {typeset(outcome.fault.message)}
            </p>
          )}
          {outcome?.flaw && (
            <p className={styles.trouble} data-testid="import-flaw">
              With it the head cannot be solved yet: {typeset(outcome.flaw.message)}
            </p>
          )}
        </section>
        <div className={styles.actions}>
          <Button variant="subtle" color="gray" onClick={onClose}>
            Cancel
          </Button>
          <Button data-testid="import-take" disabled={!outcome?.taken} onClick={take}>
            Take it into the head
          </Button>
        </div>
      </div>
    </PageDialog>
  );
}

function outcomeOf(content: Uint8Array, choices: Choices, model: HeadModel): Outcome {
  let read: ReadFile | null = null;
  try {
    read = readAs(content, choices);
    const taken = read.take(model);
    return { read, taken, fault: null, flaw: headFlaw(taken.model) };
  } catch (thrown) {
    return { read, taken: null, fault: faultReport(thrown), flaw: null };
  }
}
