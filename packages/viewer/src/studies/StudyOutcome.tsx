import { modelHash, type StudyName } from '@flathead/solver';
import { Button } from '@mantine/core';
import { useStore } from 'zustand';
import { fileName } from '../app/file-name.ts';
import { Icon } from '../app/icons.tsx';
import page from '../app/page.module.css';
import { saveText } from '../app/save-file.ts';
import { typeset } from '../format/number.ts';
import { answerKey } from '../state/answer-store.ts';
import { useModel } from '../state/use-workbench.ts';
import { PlacementResult } from './PlacementResult.tsx';
import { studyRuns } from './runs-here.ts';
import { SitesResult } from './SitesResult.tsx';
import { SweepResult } from './SweepResult.tsx';
import styles from './studies.module.css';
import { isBusy, type StudyRecord } from './study-record.ts';
import { ToleranceResult } from './ToleranceResult.tsx';

const ABOUT: Readonly<Record<StudyName, string>> = {
  placement:
    'Tries positions all over the head and solves the best of them in full. All load cases count; keep-outs, probe fields and edges stay free.',
  sweep:
    'Solves the head again for each value, and between two values on either side of a limit looks for the one that just passes.',
  tolerance:
    'Solves many heads whose parts are off by chance, says how many fail, and which part of it comes from what.',
  sites: 'Stretches the head to other site patterns and counts the touchdowns that each takes over a wafer.',
};

/** The last study of a kind: of which head, how far it is, what came out. */
export function StudyOutcome({ study }: { study: StudyName }) {
  const { records } = useStore(studyRuns.store);
  const record = records[study];
  if (record === undefined) return <p className={styles.about}>{ABOUT[study]}</p>;
  return (
    <div data-testid={`result-${study}`} data-state={record.state}>
      <ResultHead record={record} />
      {records.placement && study === 'placement' && <PlacementResult record={records.placement} />}
      {records.sweep && study === 'sweep' && <SweepResult record={records.sweep} />}
      {records.tolerance && study === 'tolerance' && <ToleranceResult record={records.tolerance} />}
      {records.sites && study === 'sites' && <SitesResult record={records.sites} />}
    </div>
  );
}

function ResultHead({ record }: { record: StudyRecord }) {
  const bench = useModel((model) => model);
  const { study, model, rows, total, text, fault } = record;
  const changed = answerKey(bench) !== answerKey(model);
  const share = study === 'placement' ? stageShare(record) : total === null ? undefined : rows.length / total;
  return (
    <>
      <header className={styles.resultHead}>
        <div>
          <p className={styles.ofHead}>
            <b>{model.name}</b> <code>{modelHash(model)}</code>
          </p>
          <p className={styles.state} role="status" data-testid="study-state">
            {stateText(record)}
          </p>
        </div>
        <Button
          size="xs"
          variant="default"
          leftSection={<Icon name="save" size={15} />}
          disabled={text === null || text === ''}
          data-testid="study-save"
          onClick={() => saveText(`${fileName(model.name)}-${study}.jsonl`, text ?? '')}
        >
          Save table
        </Button>
      </header>
      <progress
        className={styles.progress}
        aria-label="Progress of the study"
        max={1}
        {...(isBusy(record) ? (share === undefined ? {} : { value: share }) : { value: 0 })}
        data-idle={!isBusy(record) || undefined}
      />
      {changed && (
        <p className={page.notice} data-testid="study-changed">
          The head on the bench is another one now: {bench.name}. This is of the head named above.
        </p>
      )}
      {fault !== null && (
        <p className={page.trouble} role="alert">
          {typeset(fault.message)}
        </p>
      )}
    </>
  );
}

function stateText(record: StudyRecord): string {
  const { study, rows, total, state } = record;
  const made = study === 'placement' ? placementStage(record) : `${rows.length} of ${total ?? '…'} solved`;
  if (state === 'running') return made;
  if (state === 'ending') return study === 'sweep' ? 'Looking for the values that just pass' : 'Adding up';
  if (state === 'stopped')
    return study === 'placement' ? 'Stopped: the best so far' : `Stopped: ${made}, these are kept`;
  if (state === 'refused') return 'Refused';
  return study === 'placement' ? 'Done' : `Done: ${made}`;
}

const STAGES = {
  flexibility: 'Finding how the head gives way at each position',
  search: 'Trying placements',
  polish: 'Moving the best off the grid',
  verify: 'Solving the best in full',
} as const;

function placementStage({ rows }: StudyRecord): string {
  const last = lastProgress(rows);
  if (last === null) return 'Beginning';
  return last.stage === 'polish' || last.stage === 'verify'
    ? STAGES[last.stage]
    : `${STAGES[last.stage]}: ${Math.round(100 * last.done)} %`;
}

/** Share of the stage that is done, where that is known before. */
function stageShare({ rows }: StudyRecord): number | undefined {
  const last = lastProgress(rows);
  return last === null || last.stage === 'polish' || last.stage === 'verify' ? undefined : last.done;
}

function lastProgress(rows: StudyRecord['rows']) {
  const last = rows.findLast((row) => 'kind' in row && row.kind === 'progress');
  return last !== undefined && 'stage' in last ? last : null;
}
