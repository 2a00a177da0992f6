import type { Setting, SweepRow } from '@flathead/solver';
import type { CSSProperties } from 'react';
import page from '../app/page.module.css';
import { micrometreDigits } from '../format/number.ts';
import type { StudyParameter } from './parameters.ts';
import { inSentence, settingText } from './setting-text.ts';
import styles from './studies.module.css';

interface SweepMapProps {
  readonly rows: readonly SweepRow[];
  readonly axes: readonly StudyParameter[];
  readonly values: readonly (readonly Setting[])[];
  readonly onOpen: (row: SweepRow) => void;
}

/** The bow over two numbers: the darker the nearer to the limit, hatched beyond, a line between. */
export function SweepMap({ rows, axes: [down, across], values: [lines, columns], onOpen }: SweepMapProps) {
  const byPlace = new Map(rows.map((row) => [row.settings.join('|'), row]));
  const at = (i: number, k: number): SweepRow | undefined => byPlace.get([lines[i], columns[k]].join('|'));
  const fails = (i: number, k: number): boolean | null => {
    const row = at(i, k);
    return row?.outcome === undefined ? null : row.outcome === 'fail';
  };
  const differ = (a: boolean | null, b: boolean | null): boolean => a !== null && b !== null && a !== b;
  return (
    <div className={page.wide}>
      <table className={styles.heat} data-testid="sweep-map">
        <caption>
          Bow in µm; down: {inSentence(down.label)}, across: {inSentence(across.label)}
        </caption>
        <thead>
          <tr>
            <td />
            {columns.map((value) => (
              <th key={String(value)} scope="col">
                {settingText(value, across)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {lines.map((value, i) => (
            <tr key={String(value)}>
              <th scope="row">{settingText(value, down)}</th>
              {columns.map((other, k) => {
                const row = at(i, k);
                const bow = row?.figures?.bow;
                return (
                  <td
                    key={String(other)}
                    data-outcome={row?.outcome}
                    data-above={(i > 0 && differ(fails(i, k), fails(i - 1, k))) || undefined}
                    data-left={(k > 0 && differ(fails(i, k), fails(i, k - 1))) || undefined}
                    style={bow && shade(bow.value / bow.limit)}
                  >
                    {row !== undefined && bow !== undefined ? (
                      <button
                        type="button"
                        title="Open as a variant"
                        aria-label={`${micrometreDigits(bow.value)} µm, ${row.outcome}. Opens as a variant.`}
                        onClick={() => onOpen(row)}
                      >
                        {micrometreDigits(bow.value)}
                      </button>
                    ) : (
                      (row?.fault && 'none') || ''
                    )}
                  </td>
                );
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** How much of the ink a cell takes. */
function shade(share: number): CSSProperties {
  const property: Record<`--${string}`, string> = { '--share': `${Math.round(45 * Math.min(1, share))}%` };
  return property;
}
