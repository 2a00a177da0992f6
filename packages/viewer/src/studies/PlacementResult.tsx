import { applyPlacement, type Outcome } from '@flathead/solver';
import { Button } from '@mantine/core';
import { useMemo } from 'react';
import { ChartTable } from '../charts/ChartTable.tsx';
import { coordinateText, typeset } from '../format/number.ts';
import { useWorkbench } from '../state/use-workbench.ts';
import { BowAgainst } from './BowAgainst.tsx';
import { openPlacement } from './open-variant.ts';
import { SolvedMap } from './SolvedMap.tsx';
import styles from './studies.module.css';
import type { StudyRecord } from './study-record.ts';
import { TradeCurve } from './TradeCurve.tsx';

/** Where the fasteners go, how good that is and how it was found, and what it costs to have it otherwise. */
export function PlacementResult({ record }: { record: StudyRecord<'placement'> }) {
  const workbench = useWorkbench();
  const { model, summary, rows } = record;
  const soFar = rows.findLast((row) => row.kind === 'better' && row.task === 0);
  const placement = summary?.best.placement ?? (soFar?.kind === 'better' ? soFar.placement : null);
  const placed = useMemo(() => (placement === null ? null : applyPlacement(model, placement)), [model, placement]);
  if (placement === null || placed === null) return null;
  const ended = record.state === 'done' || record.state === 'stopped';
  return (
    <>
      {summary !== null && (
        <p className={styles.sentence} data-outcome={summary.verified.outcome} data-testid="placement-sentence">
          <Mark outcome={summary.verified.outcome} /> {typeset(summary.verified.sentence)}
        </p>
      )}
      <div className={styles.actions}>
        <Button
          size="xs"
          disabled={!ended}
          data-testid="placement-accept"
          onClick={() => openPlacement(workbench, model, placement, 'placed')}
        >
          Open as variant
        </Button>
        <BowAgainst model={model} bow={summary?.verified.bow ?? null} />
      </div>
      {ended && <SolvedMap model={placed} />}
      {summary !== null && (
        <ul className={styles.remarks}>
          {summary.remarks.map((remark) => (
            <li key={remark}>{typeset(remark)}</li>
          ))}
          <li>Nearest screw head to a probe field: {summary.best.siteGap.toFixed(2)} mm.</li>
        </ul>
      )}
      {summary !== null && summary.curve.length > 0 && <TradeCurve record={record} />}
      <ChartTable
        title="Fasteners as placed"
        columns={['Fastener', 'x, mm', 'y, mm']}
        rows={placement.map(({ name, at }) => [name, ...at.map((one) => coordinateText(round(one)))])}
      />
    </>
  );
}

/** An outcome by word. */
function Mark({ outcome }: { outcome: Outcome }) {
  return <b className={styles.mark}>{{ pass: 'Pass', marginal: 'Marginal', fail: 'Fail' }[outcome]}</b>;
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}
