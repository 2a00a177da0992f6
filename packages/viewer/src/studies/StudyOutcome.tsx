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
import { aboutTime, timeLeft } from './outlook.ts';
import { PlacementResult } from './PlacementResult.tsx';
import { studyRuns } from './runs-here.ts';
import { SitesResult } from './SitesResult.tsx';
import { StudyOutlook } from './StudyOutlook.tsx';
import { SweepResult } from './SweepResult.tsx';
import styles from './studies.module.css';
import { isBusy, type StudyRecord } from './study-record.ts';
import { ToleranceResult } from './ToleranceResult.tsx';

interface StudyOutcomeProps {
  readonly study: StudyName;
  /** What would be run now; `null` while a field holds no usable value. */
  readonly plan: Readonly<Record<string, unknown>> | null;
}

/** The last study of a kind: of which head, how far it is, what came out. Before that, what will. */
export function StudyOutcome({ study, plan }: StudyOutcomeProps) {
  const { records } = useStore(studyRuns.store);
  const record = records[study];
  if (record === undefined) return <StudyOutlook {...{ study, plan }} />;
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
  const { study, rows, total, state, since } = record;
  const made = study === 'placement' ? placementStage(record) : `${rows.length} of ${total ?? '…'} solved`;
  const left = total === null ? null : timeLeft(rows.length, total, (performance.now() - since) / 1000);
  if (state === 'running') return left === null ? made : `${made}, ${aboutTime(left)} left`;
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
