import type { SitesRow } from '@flathead/solver';
import page from '../app/page.module.css';
import { PointChart } from '../charts/PointChart.tsx';
import { fieldText, micrometreDigits } from '../format/number.ts';
import { useWorkbench } from '../state/use-workbench.ts';
import { FaultsOf } from './FaultsOf.tsx';
import { openRow } from './open-variant.ts';
import styles from './studies.module.css';
import type { StudyRecord } from './study-record.ts';

/** Dense against sparse: length, bow, and what it takes to test a wafer. */
export function SitesResult({ record }: { record: StudyRecord<'sites'> }) {
  const workbench = useWorkbench();
  const { model, rows, summary } = record;
  if (rows.length === 0) return null;
  const open = (row: SitesRow): void => void openRow(workbench, record, row, patternWords(row));
  const best = rows.find(({ index }) => index === summary?.fewest);
  const placed = rows.flatMap((row) => {
    const { stepping, figures } = row;
    return stepping === undefined || figures?.bow === undefined ? [] : [{ row, stepping, bow: figures.bow }];
  });
  return (
    <>
      {best !== undefined && (
        <p className={styles.sentence} data-testid="fewest">
          Fewest touchdowns without failing: <b>{patternWords(best)}</b>, {best.stepping?.touchdowns} for a wafer.
        </p>
      )}
      {summary !== null && best === undefined && (
        <p className={styles.sentence} data-testid="fewest">
          No pattern passes.
        </p>
      )}
      {placed.length > 0 && (
        <PointChart
          testId="sites-chart"
          title="Bow over touchdowns, a point for each pattern"
          xTitle="touchdowns for a wafer, fewer is better"
          yTitle="bow, µm, less is better"
          ticks={placed.map(({ stepping }) => stepping.touchdowns)}
          limit={model.limits.bow * 1000}
          joined={false}
          points={placed.map(({ row, stepping, bow }) => ({
            x: stepping.touchdowns,
            y: bow.value * 1000,
            label: `skip ${row.skip.join(', ')}`,
            outcome: row.outcome ?? 'fail',
            words: `${patternWords(row)}: ${stepping.touchdowns} touchdowns, bow ${micrometreDigits(bow.value)} µm`,
          }))}
          onOpen={(i) => open(placed[i].row)}
        />
      )}
      <div className={page.wide}>
        <table className={styles.table} data-testid="sites-table">
          <caption className={page.spoken}>Site patterns</caption>
          <thead>
            <tr>
              {[
                'Pattern',
                'Length × width, mm',
                'Bow, µm',
                'Verdict',
                'Touchdowns',
                'Dies',
                'Sites lost',
                'Efficiency',
                '',
              ].map((column) => (
                <th key={column} scope="col">
                  {column}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={row.index} data-best={row === best || undefined}>
                <th scope="row">{patternWords(row)}</th>
                <td>{row.length.map((side) => fieldText(Number(side.toFixed(2)))).join(' × ')}</td>
                <td>{row.figures?.bow ? micrometreDigits(row.figures.bow.value) : '–'}</td>
                <td className={styles.verdict} data-outcome={row.outcome}>
                  {row.outcome ?? 'no answer'}
                </td>
                <td>{row.stepping?.touchdowns ?? '–'}</td>
                <td>{row.stepping?.dies ?? '–'}</td>
                <td>{row.stepping?.lost ?? '–'}</td>
                <td>{row.stepping ? `${(100 * row.stepping.efficiency).toFixed(1)} %` : '–'}</td>
                <td>
                  {row.figures !== undefined && (
                    <button
                      type="button"
                      className={styles.add}
                      aria-label={`Open as a variant: ${patternWords(row)}`}
                      onClick={() => open(row)}
                    >
                      Open
                    </button>
                  )}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p className={styles.note}>
        Touchdowns are those of a plan that tests every die once; a prober may step otherwise.
      </p>
      <FaultsOf rows={rows} />
    </>
  );
}

function patternWords({ columns, rows, skip }: SitesRow): string {
  return `${columns} × ${rows}, skip ${skip.join(', ')}`;
}
