import type { Placement } from '@flathead/solver';
import page from '../app/page.module.css';
import { ChartTable } from '../charts/ChartTable.tsx';
import { PointChart } from '../charts/PointChart.tsx';
import { fieldText, micrometreDigits } from '../format/number.ts';
import { useWorkbench } from '../state/use-workbench.ts';
import { openPlacement } from './open-variant.ts';
import type { StudyRecord } from './study-record.ts';

/** The best bow over the number of fasteners or their clearance. */
export function TradeCurve({ record }: { record: StudyRecord<'placement'> }) {
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
        ticks={found.map(({ at }) => at)}
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
