import {
  draftHead,
  type FaultReport,
  faultReport,
  type HeadDraft,
  type HeadModel,
  screws,
  siteLayout,
} from '@flathead/solver';
import { Button } from '@mantine/core';
import { useMemo, useRef, useState } from 'react';
import { flushSync } from 'react-dom';
import { Icon } from '../app/icons.tsx';
import { PageDialog } from '../app/PageDialog.tsx';
import { typeset } from '../format/number.ts';
import { FieldTrouble } from '../panels/FieldTrouble.tsx';
import fields from '../panels/field.module.css';
import { HelpLine } from '../panels/HelpLine.tsx';
import { ribLines } from '../state/rib-lines.ts';
import { withValue } from '../state/set-value.ts';
import { boxOf } from '../state/shape-box.ts';
import { useWorkbench } from '../state/use-workbench.ts';
import { withVariant } from '../state/workbook.ts';
import { PresetRow } from './PresetRow.tsx';
import { BODIES, FASTENERS, FIRST_DRAFT, FRAMES, PATTERNS, PROBES } from './presets.ts';
import { StartChoice } from './StartChoice.tsx';
import { type Answers, StartField } from './StartField.tsx';
import { StartPlan } from './StartPlan.tsx';
import { StartPlate } from './StartPlate.tsx';
import styles from './start.module.css';

const SCREWS = Object.keys(screws);
const NO_NAME = 'A head needs a name, for the shelf and the report.';

/** From nothing to a head that can be solved, by few questions; sizes follow from the answers. */
export function StartDialog({ onClose }: { onClose: () => void }) {
  const { head, history, view } = useWorkbench();
  const [draft, setDraft] = useState(FIRST_DRAFT);
  const [doubts, setDoubts] = useState<ReadonlyMap<string, string>>(new Map());
  const dialog = useRef<HTMLDivElement>(null);
  const { model, fault } = useMemo(() => drafted(draft), [draft]);
  /** Drawn pale while the answers give no head. */
  const [last, setLast] = useState(model);
  if (model !== null && model !== last) setLast(model);
  const answers: Answers = {
    draft,
    fault,
    answer: (path, value) => setDraft((now) => withAnswer(now, path, value)),
    doubt: (path, reason) =>
      setDoubts((now) => {
        const next = new Map([...now].filter(([other]) => other !== path));
        return reason === null ? next : next.set(path, reason);
      }),
  };
  const [doubtful] = doubts;
  const unnamed = fault?.path === 'name';
  const refusal = doubtful?.[1] ?? (unnamed ? NO_NAME : (fault?.message ?? null));
  const make = (): void => {
    if (model === null || refusal !== null) {
      const refused = dialog.current?.querySelector<HTMLElement>('[aria-invalid="true"]');
      refused?.focus();
      return;
    }
    history.editBook((book) => withVariant(book, model));
    // What follows is compared with this head, not with the one that was there.
    const reference = head.getState().book.bench;
    view.setState(({ homeCalls }) => ({ caseName: null, exaggeration: null, homeCalls: homeCalls + 1, reference }));
    // Nothing outside takes the focus while the dialog is open.
    flushSync(onClose);
    document.querySelector<HTMLElement>('[data-testid="verdict"]')?.focus();
  };
  const field = (
    path: string,
    label: string,
    unit: string,
    help: string,
    more: { scale?: number; empty?: string } = {},
  ) => <StartField answers={answers} path={path} label={label} unit={unit} help={help} {...more} />;

  return (
    <PageDialog title="New head" testId="start" wide onClose={onClose}>
      <div className={styles.columns} ref={dialog}>
        <HelpLine
          className={styles.questions}
          label="Questions"
          idle="Choose a starting point, then change what differs. Everything can be edited later."
        >
          <div className={styles.two}>
            <section className={styles.question} aria-label="Name">
              <div className={fields.row}>
                <label className={fields.label} htmlFor="start-name">
                  Name
                </label>
                <input
                  id="start-name"
                  data-first
                  aria-invalid={unnamed}
                  aria-describedby={unnamed ? 'start-name-trouble' : undefined}
                  className={fields.wide}
                  maxLength={200}
                  autoComplete="off"
                  data-testid="start-name"
                  value={draft.name}
                  onChange={(event) => answers.answer('name', event.currentTarget.value)}
                />
                <FieldTrouble id="start-name-trouble" message={unnamed ? NO_NAME : null} />
              </div>
            </section>
            <section className={styles.question} aria-labelledby="start-sites">
              <h3 id="start-sites">Which sites are tested at once?</h3>
              <PresetRow label="Site pattern, rows by columns" presets={PATTERNS} draft={draft} choose={setDraft} />
              <div className={styles.pairs}>
                {field('rows', 'Rows', '', 'Rows of sites, along y. Whole number, 1 to 16.')}
                {field('columns', 'Columns', '', 'Sites in a row, along x. Whole number, 1 to 16.')}
                {field('die.0', 'Die along x', 'mm', 'Size of a die with its scribe line. 0.001 to 100 mm.')}
                {field('die.1', 'Die along y', 'mm', 'Size of a die with its scribe line. 0.001 to 100 mm.')}
                {field(
                  'skip.0',
                  'Dies skipped, x',
                  '',
                  'Dies left out between neighbouring sites; skipping makes room. Whole number, 0 to 20.',
                )}
                {field(
                  'skip.1',
                  'Dies skipped, y',
                  '',
                  'Dies left out between neighbouring sites; skipping makes room. Whole number, 0 to 20.',
                )}
              </div>
            </section>
            <section className={styles.question} aria-labelledby="start-probes">
              <h3 id="start-probes">What do its probes push with?</h3>
              <PresetRow label="Probes" presets={PROBES} draft={draft} choose={setDraft} />
              <div className={styles.pairs}>
                {field('probes.count', 'Probes a site', '', 'Probes in each site. Whole number, 1 to 20000.')}
                {field(
                  'probes.pitch',
                  'Pitch',
                  'mm',
                  'Hole to hole in the drilled field; holes are 60 % of it wide. 0.02 to 10 mm.',
                )}
                {field(
                  'probes.preload',
                  'Preload, each',
                  'N',
                  'Force of one probe against the mounted head, from the data of the probe. 0 to 100 N.',
                )}
                {field(
                  'probes.touchdown',
                  'At touchdown',
                  'N',
                  'Force of one probe on the wafer, from the data of the probe. 0 to 100 N.',
                  { empty: 'not given' },
                )}
              </div>
              <p className={fields.note}>The forces offered are orders of size. Use those of your probe.</p>
            </section>
            <section className={styles.question} aria-labelledby="start-body">
              <h3 id="start-body">What is the body made of?</h3>
              <PresetRow label="Body" presets={BODIES} draft={draft} choose={setDraft} />
              <StartPlate
                answers={answers}
                part="body"
                help="Thickness of the body; bending stiffness grows with its cube. 0.001 to 1000 mm."
              />
            </section>
            <section className={styles.question} aria-labelledby="start-frame">
              <h3 id="start-frame">Does a frame stiffen it?</h3>
              <PresetRow label="Frame" presets={FRAMES} draft={draft} choose={setDraft} />
              <FieldTrouble id="start-ribs-trouble" message={fault?.path === 'frame.ribs' ? fault.message : null} />
              <StartPlate
                answers={answers}
                part="frame"
                help="Thickness of the frame and its ribs. 0.001 to 1000 mm."
              />
            </section>
            <section className={styles.question} aria-labelledby="start-fasteners">
              <h3 id="start-fasteners">What holds it?</h3>
              <PresetRow label="Fasteners" presets={FASTENERS} draft={draft} choose={setDraft} />
              <div className={styles.pairs}>
                <StartChoice
                  label="Screw"
                  name="Screw"
                  value={draft.screw}
                  options={SCREWS.map((value) => ({ value, label: value }))}
                  choose={(value) => answers.answer('screw', value)}
                />
              </div>
            </section>
            <section className={styles.question} aria-labelledby="start-limit">
              <h3 id="start-limit">What is the planarity limit?</h3>
              <div className={styles.pairs}>
                {field(
                  'bow',
                  'Bow, at most',
                  'µm',
                  'Largest deviation of the site area from the plane of the fasteners. 1 to 10000 µm.',
                  { scale: 1000 },
                )}
              </div>
            </section>
          </div>
        </HelpLine>
        <section className={styles.outcome} aria-label="The head that follows">
          {last ? (
            <div className={styles.drawn} data-old={model === null || undefined}>
              <StartPlan model={last} />
            </div>
          ) : (
            <div className={styles.plan} />
          )}
          {model && (
            <p className={styles.summary} role="status">
              {summary(model)}
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
            <Button variant="subtle" color="gray" onClick={onClose}>
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
      </div>
    </PageDialog>
  );
}

function withAnswer(draft: HeadDraft, path: string, value: number | string | undefined): HeadDraft {
  return Object.assign({}, draft, withValue(draft, path, value));
}

function drafted(draft: HeadDraft): { readonly model: HeadModel | null; readonly fault: FaultReport | null } {
  try {
    return { model: draftHead(draft), fault: null };
  } catch (thrown) {
    return { model: null, fault: faultReport(thrown) };
  }
}

function summary(model: HeadModel): string {
  const { sites, body, frame, fasteners } = model;
  const ribs = (frame?.ribs ?? []).flatMap((rib) => ribLines(model, rib)).length;
  const count = siteLayout(sites).length;
  const { count: probes, preload, field } = sites.probes;
  const [width, height] = boxOf(body.outline);
  const force = count * probes * preload;
  return [
    `${count} ${count === 1 ? 'site' : 'sites'} of ${field[0]} × ${field[1]} mm push with ${force.toFixed(force < 10 ? 1 : 0)} N in all`,
    `body ${width} × ${height} mm${frame ? `, frame ${boxOf(frame.outer).join(' × ')} mm` : ''}`,
    ...(ribs === 0 ? [] : [`${ribs} ${ribs === 1 ? 'rib' : 'ribs'}`]),
    `${fasteners.length} screws`,
  ]
    .join('; ')
    .concat('.');
}
