import { applyPlacement, type HeadModel, type Outcome, type Placement } from '@flathead/solver';
import { Button } from '@mantine/core';
import { useEffect, useMemo } from 'react';
import { useStore } from 'zustand';
import page from '../app/page.module.css';
import { ChartTable } from '../charts/ChartTable.tsx';
import { Legend } from '../charts/Legend.tsx';
import { PlanMap } from '../charts/PlanMap.tsx';
import { PointChart } from '../charts/PointChart.tsx';
import { planScale } from '../charts/plan-field.ts';
import { coordinateText, fieldText, limitDigits, micrometreDigits, typeset } from '../format/number.ts';
import { answerOf } from '../state/answer-store.ts';
import { useWorkbench } from '../state/use-workbench.ts';
import { openPlacement } from './open-variant.ts';
import styles from './studies.module.css';
import type { StudyRecord } from './study-record.ts';

const MAP = 620;

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

function TradeCurve({ record }: { record: StudyRecord<'placement'> }) {
  const workbench = useWorkbench();
  const { model, summary } = record;
  const curve = summary!.curve;
  const over = curve[0].over === 'count' ? 'fasteners' : 'mm from screw heads to the probe fields';
  const found = curve.flatMap(({ at, best }) => (best === null ? [] : [{ at, best }]));
  const limit = model.limits.bow;
  const open = (placement: Placement, at: number): void =>
    openPlacement(
      workbench,
      model,
      placement,
      curve[0].over === 'count' ? `${at} fasteners` : `${fieldText(at)} mm clear`,
    );
  return (
    <section>
      <h2 className={page.heading}>
        {curve[0].over === 'count' ? 'More or fewer fasteners' : 'Distance to the fields'}
      </h2>
      <PointChart
        testId="trade-curve"
        title={`Best bow over ${over}`}
        xTitle={over}
        yTitle="bow, µm"
        limit={limit * 1000}
        points={found.map(({ at, best }) => ({
          x: at,
          y: best.bow * 1000,
          outcome: best.bow > limit || !best.keepsLimits ? 'fail' : 'pass',
          words: `${fieldText(at)} ${over}: bow ${micrometreDigits(best.bow)} µm`,
        }))}
        onOpen={(i) => open(found[i].best.placement, found[i].at)}
      />
      <ChartTable
        title={`Best placement over ${over}`}
        columns={[over, 'bow, µm', 'flatness, µm', 'found']}
        rows={curve.map(({ at, best, refused }) =>
          best === null
            ? [fieldText(at), '–', '–', refused ?? 'none found']
            : [
                fieldText(at),
                micrometreDigits(best.bow),
                micrometreDigits(best.flatness),
                best.how.method === 'all'
                  ? `best of all ${best.how.placements}`
                  : `${best.how.again} of ${best.how.starts} starts agree`,
              ],
        )}
      />
    </section>
  );
}

/** The bow of the head as it was, as placed, and the limit. */
function BowAgainst({ model, bow }: { model: HeadModel; bow: number | null }) {
  const answer = useStore(useWorkbench().answers, (state) => answerOf(state, model));
  const before =
    answer?.kind === 'solved' ? answer.result.verdict.criteria.find(({ criterion }) => criterion === 'bow') : undefined;
  return (
    <dl className={styles.figures}>
      {before !== undefined && (
        <div>
          <dt>As it was</dt>
          <dd>{micrometreDigits(before.value)} µm</dd>
        </div>
      )}
      {bow !== null && (
        <div>
          <dt>As placed</dt>
          <dd data-testid="placement-bow">{micrometreDigits(bow)} µm</dd>
        </div>
      )}
      <div>
        <dt>Limit</dt>
        <dd>{limitDigits(model.limits.bow)} µm</dd>
      </div>
    </dl>
  );
}

/** The head as placed, solved while the bench needs no solver. */
function SolvedMap({ model }: { model: HeadModel }) {
  const { background, answers } = useWorkbench();
  const answer = useStore(answers, (state) => answerOf(state, model));
  useEffect(() => {
    background.want('study', [model]);
    return () => background.want('study', []);
  }, [background, model]);
  if (answer?.kind !== 'solved') return <p className={styles.waits}>The map follows as soon as the bench is quiet.</p>;
  const head = { model, result: answer.result, caseName: null };
  return (
    <figure className={styles.map} data-testid="placement-map">
      <PlanMap
        head={head}
        width={MAP}
        label={`Map of ${model.name} as placed: bow against the limit, keep-outs hatched`}
      />
      <figcaption>
        <Legend scale={planScale(head, 'deviation')} caption="Bow, µm" unit="µm" factor={1000} />
      </figcaption>
    </figure>
  );
}

/** An outcome by word. */
function Mark({ outcome }: { outcome: Outcome }) {
  return <b className={styles.mark}>{{ pass: 'Pass', marginal: 'Marginal', fail: 'Fail' }[outcome]}</b>;
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}
