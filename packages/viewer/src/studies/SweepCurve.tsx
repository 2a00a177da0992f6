import type { Crossing, SweepRow } from '@flathead/solver';
import { ChartTable } from '../charts/ChartTable.tsx';
import { PointChart } from '../charts/PointChart.tsx';
import { fieldText, micrometreDigits } from '../format/number.ts';
import type { StudyParameter } from './parameters.ts';
import { inSentence } from './setting-text.ts';
import styles from './studies.module.css';

/** The head as it is has its mark unless it lies further off the range than this share of it. */
const FAR = 0.5;

interface SweepCurveProps {
  readonly rows: readonly SweepRow[];
  readonly axis: StudyParameter;
  readonly crossings: readonly Crossing[];
  /** mm */
  readonly limit: number;
  readonly onOpen: (row: SweepRow) => void;
}

/** The bow over one number: the value of the head as it is, the limit, and where it is met. */
export function SweepCurve({ rows, axis, crossings, limit, onOpen }: SweepCurveProps) {
  const { label, unit, scale, value: now } = axis;
  const solved = rows.flatMap((row) => {
    const bow = row.figures?.bow;
    const [x] = row.settings;
    return bow === undefined || typeof x !== 'number' ? [] : [{ row, bow, x: x * scale }];
  });
  if (solved.length === 0) return null;
  const xs = solved.map(({ x }) => x);
  const [least, most] = [Math.min(...xs), Math.max(...xs)];
  const shown = Number((now * scale).toPrecision(4));
  const isNear = shown >= least - FAR * (most - least) && shown <= most + FAR * (most - least);
  const title = `Bow over ${inSentence(label)}`;
  return (
    <>
      <PointChart
        testId="sweep-curve"
        title={title}
        xTitle={`${label}, ${unit}`}
        yTitle="bow, µm"
        limit={limit * 1000}
        crossings={crossings.filter(({ criterion }) => criterion === 'bow').map(({ value }) => value * scale)}
        ticks={solved.map(({ x }) => Number(x.toPrecision(3)))}
        now={isNear ? shown : undefined}
        points={solved.map(({ row, bow, x }) => ({
          x,
          y: bow.value * 1000,
          outcome: row.outcome ?? 'fail',
          words: `${label} ${fieldText(x)} ${unit}: bow ${micrometreDigits(bow.value)} µm, ${row.outcome}`,
        }))}
        onOpen={(i) => onOpen(solved[i].row)}
      />
      {!isNear && (
        <p className={styles.note}>
          The head as it is, with {fieldText(shown)} {unit}, lies far off this range.
        </p>
      )}
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
