import { axisValues, type Crossing, type SweepPlan, type SweepRow } from '@flathead/solver';
import { ChartTable } from '../charts/ChartTable.tsx';
import { PointChart } from '../charts/PointChart.tsx';
import { fieldText, micrometreDigits } from '../format/number.ts';
import { useWorkbench } from '../state/use-workbench.ts';
import { FaultsOf } from './FaultsOf.tsx';
import { openRow } from './open-variant.ts';
import { type StudyParameter, studyParameters } from './parameters.ts';
import { SweepMap } from './SweepMap.tsx';
import { passingDigits, settingText } from './setting-text.ts';
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
  const open = (row: SweepRow): void => void openRow(workbench, record, row, settingWords(row, axes));
  return (
    <>
      {crossings.length > 0 && (
        <ul className={styles.crossings} data-testid="crossings">
          {crossings.map((crossing) => (
            <li key={`${crossing.criterion} ${crossing.value} ${crossing.at?.value}`}>
              {crossingWords(crossing, axes)}
            </li>
          ))}
        </ul>
      )}
      {crossings.length === 0 && record.state === 'done' && (
        <p className={styles.sentence} data-testid="crossings">
          {uncrossedWords(rows, model.limits.bow)}
        </p>
      )}
      {axes.length === 1 ? (
        <SweepCurve rows={rows} axis={axes[0]} crossings={crossings} limit={model.limits.bow} onOpen={open} />
      ) : (
        <SweepMap rows={rows} axes={axes} values={vary.map(axisValues)} onOpen={open} />
      )}
      {rows.length > 0 && <p className={styles.note}>A point or a cell opens its head as a variant.</p>}
      <FaultsOf rows={rows} />
    </>
  );
}

/** What a range without a crossing is like. */
function uncrossedWords(rows: readonly SweepRow[], limit: number): string {
  const bows = rows.flatMap(({ figures }) => (figures?.bow === undefined ? [] : [figures.bow.value]));
  const said = `the bow limit of ${micrometreDigits(limit)}\u00a0µm`;
  if (bows.length > 0 && bows.every((bow) => bow > limit)) return `All of this range is over ${said}.`;
  if (bows.length > 0 && bows.every((bow) => bow <= limit)) return `All of this range is within ${said}.`;
  return 'No limit is crossed in this range.';
}

interface SweepCurveProps {
  readonly rows: readonly SweepRow[];
  readonly axis: StudyParameter;
  readonly crossings: readonly Crossing[];
  /** mm */
  readonly limit: number;
  readonly onOpen: (row: SweepRow) => void;
}

function SweepCurve({ rows, axis, crossings, limit, onOpen }: SweepCurveProps) {
  const { label, unit, scale } = axis;
  const solved = rows.flatMap((row) => {
    const bow = row.figures?.bow;
    const [x] = row.settings;
    return bow === undefined || typeof x !== 'number' ? [] : [{ row, bow, x: x * scale }];
  });
  if (solved.length === 0) return null;
  const title = `Bow over ${label.toLowerCase()}`;
  return (
    <>
      <PointChart
        testId="sweep-curve"
        title={title}
        xTitle={`${label}, ${unit}`}
        yTitle="bow, µm"
        limit={limit * 1000}
        crossings={crossings.filter(({ criterion }) => criterion === 'bow').map(({ value }) => value * scale)}
        points={solved.map(({ row, bow, x }) => ({
          x,
          y: bow.value * 1000,
          outcome: row.outcome ?? 'fail',
          words: `${label} ${fieldText(x)} ${unit}: bow ${micrometreDigits(bow.value)} µm, ${row.outcome}`,
        }))}
        onOpen={(i) => onOpen(solved[i].row)}
      />
      <ChartTable
        title={title}
        testId="sweep-table"
        columns={[`${label}, ${unit}`, 'bow, µm', 'verdict', 'worst at']}
        rows={solved.map(({ row, bow, x }) => [
          fieldText(x),
          micrometreDigits(bow.value),
          row.outcome ?? '',
          `${bow.site}, ${bow.case}`,
        ])}
      />
    </>
  );
}

/** `Thickness of the body that just passes: 5.31 mm (±0.03 mm numerically). Above that it passes.` */
function crossingWords({ criterion, value, error, passes, at }: Crossing, axes: readonly StudyParameter[]): string {
  const axis = (name: string) => axes.find(({ label }) => label === name);
  const along = axes.find(({ label }) => label !== at?.parameter) ?? axes[0];
  const spread = error === null ? '' : ` (±${fieldText(Number((error * along.scale).toPrecision(1)))} numerically)`;
  const other = at && axis(at.parameter);
  const where = at && other ? `, at ${at.parameter.toLowerCase()} ${settingText(at.value, other)}` : '';
  const what = criterion === 'bow' ? '' : ` by ${criterion}`;
  return `${along.label} that just passes${what}${where}: ${passingDigits(value * along.scale, passes)} ${along.unit}${spread}; it passes ${passes} that.`;
}

function settingWords({ settings }: SweepRow, axes: readonly StudyParameter[]): string {
  return settings.map((setting, i) => `${axes[i].label.toLowerCase()} ${settingText(setting, axes[i])}`).join(', ');
}
