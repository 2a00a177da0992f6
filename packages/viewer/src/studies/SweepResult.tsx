import { axisValues, type SweepPlan, type SweepRow } from '@flathead/solver';
import { useWorkbench } from '../state/use-workbench.ts';
import { Crossings } from './Crossings.tsx';
import { uncrossedWords } from './crossing-words.ts';
import { FaultsOf } from './FaultsOf.tsx';
import { openRow } from './open-variant.ts';
import { studyParameters } from './parameters.ts';
import { SweepCurve } from './SweepCurve.tsx';
import { SweepMap } from './SweepMap.tsx';
import { settingWords } from './setting-text.ts';
import styles from './studies.module.css';
import type { StudyRecord } from './study-record.ts';

/** A curve over one number or a map over two, and the values that just pass. */
export function SweepResult({ record }: { record: StudyRecord<'sweep'> }) {
  const workbench = useWorkbench();
  const { model, rows, summary } = record;
  const { vary } = record.plan as Extract<SweepPlan, { vary: unknown }>;
  const known = studyParameters(model);
  const axes = vary.map(({ path }) => known.find((one) => one.path === path)!);
  const crossings = summary?.crossings ?? [];
  const open = (settings: SweepRow['settings'], index = -1): void =>
    void openRow(workbench, record, { index, settings: [...settings] }, settingWords(settings, axes));
  const openPoint = ({ settings, index }: SweepRow): void => open(settings, index);
  return (
    <>
      {crossings.length > 0 && <Crossings {...{ crossings, axes }} onOpen={open} />}
      {crossings.length === 0 && record.state === 'done' && (
        <p className={styles.sentence} data-testid="crossings">
          {uncrossedWords(rows, model.limits.bow, axes)}
        </p>
      )}
      {axes.length === 1 ? (
        <SweepCurve rows={rows} axis={axes[0]} crossings={crossings} limit={model.limits.bow} onOpen={openPoint} />
      ) : (
        <SweepMap rows={rows} axes={axes} values={vary.map(axisValues)} onOpen={openPoint} />
      )}
      {rows.length > 0 && <p className={styles.note}>A point or a cell opens its head as a variant.</p>}
      <FaultsOf rows={rows} />
    </>
  );
}
