import { type FaultReport, faultReport, type HeadModel } from '@flathead/solver';
import { type FileKind, fileKind, fileRoles, headFlaw, type ReadFile, type Taken } from '@flathead/solver/exchange';
import { Button, NativeSelect } from '@mantine/core';
import { type ChangeEvent, useMemo, useState } from 'react';
import { PageDialog } from '../app/PageDialog.tsx';
import { typeset } from '../format/number.ts';
import fields from '../panels/field.module.css';
import { notify } from '../state/notice-store.ts';
import { useModel, useWorkbench } from '../state/use-workbench.ts';
import styles from './exchange.module.css';
import { PreviewTable } from './PreviewTable.tsx';
import { type Choices, FIRST_CHOICES, readAs } from './readings.ts';

/** Longest file that is read, MB: a list of a hundred thousand probes has some three. */
const MOST_MEGABYTES = 20;

const KINDS: { readonly value: FileKind; readonly label: string }[] = [
  { value: 'probes', label: 'Probe list' },
  { value: 'outline', label: 'Drawing (DXF, SVG)' },
  { value: 'heights', label: 'Heights of the board' },
  { value: 'fasteners', label: 'Fastener list' },
];
const UNITS = [
  { value: '', label: 'as the file says' },
  ...['mm', 'um', 'mil', 'inch'].map((value) => ({ value, label: typeset(value) })),
];
const ROLES: Readonly<Record<string, string>> = {
  points: 'Point loads, one a probe',
  field: 'Even fields',
  auto: 'What its layers say',
  outline: 'Outline of the body',
};

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
  const layers = useMemo(
    () => (file === null || choices.kind !== 'outline' ? [] : layersOf(file.content)),
    [file, choices.kind],
  );

  const open = async (event: ChangeEvent<HTMLInputElement>): Promise<void> => {
    const chosen = event.currentTarget.files?.[0];
    if (chosen === undefined) return;
    const large = chosen.size > MOST_MEGABYTES * 1e6;
    setTooLarge(
      large ? `${chosen.name} has ${(chosen.size / 1e6).toFixed(0)} MB; at most ${MOST_MEGABYTES} are read.` : null,
    );
    if (large) return;
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
          <Choice
            label="It is a"
            name="kind"
            value={choices.kind}
            options={KINDS}
            choose={(kind) => choose({ kind, as: '', layers: [] })}
          />
          <Choice
            label="Lengths in"
            name="units"
            value={choices.units}
            options={UNITS}
            choose={(units) => choose({ units })}
          />
          {fileRoles(choices.kind).length > 0 && (
            <Choice
              label="Take as"
              name="as"
              value={choices.as === '' ? fileRoles(choices.kind)[0] : choices.as}
              options={fileRoles(choices.kind).map((value) => ({
                value,
                label: ROLES[value] ?? value[0].toUpperCase() + value.slice(1),
              }))}
              choose={(as) => choose({ as })}
            />
          )}
          {choices.kind === 'outline' && (
            <>
              <label className={styles.tick}>
                <input
                  type="checkbox"
                  checked={choices.centre}
                  onChange={(event) => choose({ centre: event.currentTarget.checked })}
                />
                Move its middle to the origin
              </label>
              {layers.length > 1 && (
                <fieldset className={styles.layers}>
                  <legend>Layers, all if none is chosen</legend>
                  {layers.map((name) => (
                    <label key={name} className={styles.tick}>
                      <input
                        type="checkbox"
                        data-testid={`layer-${name}`}
                        checked={choices.layers.includes(name)}
                        onChange={({ currentTarget: { checked } }) =>
                          choose({
                            layers: checked
                              ? [...choices.layers, name]
                              : choices.layers.filter((other) => other !== name),
                          })
                        }
                      />
                      {name}
                    </label>
                  ))}
                </fieldset>
              )}
            </>
          )}
        </div>
        <section className={styles.preview} aria-label="What was read" aria-live="polite">
          {outcome === null && tooLarge === null && (
            <p className={styles.quiet}>
              Choose a file. What is read and what is left out shows here; the head stays as it is until you take it.
            </p>
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

interface ChoiceProps<T extends string> {
  readonly label: string;
  readonly name: string;
  readonly value: T;
  readonly options: { readonly value: string; readonly label: string }[];
  choose(value: T): void;
}

function Choice<T extends string>({ label, name, value, options, choose }: ChoiceProps<T>) {
  return (
    <div className={fields.row}>
      <span className={fields.label}>{label}</span>
      <NativeSelect
        size="xs"
        aria-label={label}
        data-testid={`import-${name}`}
        data={options}
        value={value}
        onChange={(event) => choose(event.currentTarget.value as T)}
      />
    </div>
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

/** Every layer of a drawing, whichever are chosen. */
function layersOf(content: Uint8Array): readonly string[] {
  try {
    return readAs(content, { ...FIRST_CHOICES, kind: 'outline' }).preview.layers.map(({ name }) => name);
  } catch {
    return [];
  }
}
