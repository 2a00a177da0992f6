import { scaleLinear } from 'd3-scale';
import { fieldText } from '../format/number.ts';
import type { Fall } from '../state/waterfall.ts';
import styles from './compare.module.css';

interface WaterfallChartProps {
  readonly falls: readonly Fall[];
  readonly decimals: number;
  readonly names: readonly [from: string, to: string];
  /** As the levels. */
  readonly limit: number;
  readonly unit: string;
}

const WIDTH = 760;
const ROW = 30;
const LABELS = 330;
const NUMBERS = 70;

/** What each change adds to a criterion: bars that hang from level to level between the two heads. */
export function WaterfallChart({ falls, decimals, names, limit, unit }: WaterfallChartProps) {
  const one = 10 ** decimals;
  const first = falls[0].from;
  const last = falls[falls.length - 1].to;
  const rows = [
    { key: 'from', words: names[0], from: 0, to: first, total: true },
    ...falls.map(({ changes, from, to }) => {
      const words = changes.map((change) => change.words).join(' and ');
      return { key: changes[0].id, words, from, to, total: false };
    }),
    { key: 'to', words: names[1], from: 0, to: last, total: true },
  ];
  const most = Math.max(limit * one, ...rows.map(({ to }) => to)) * 1.02;
  const x = scaleLinear()
    .domain([0, most])
    .range([LABELS, WIDTH - NUMBERS]);
  const height = ROW * rows.length + 22;
  return (
    <svg
      className={styles.waterfall}
      viewBox={`0 0 ${WIDTH} ${height}`}
      role="img"
      aria-label={spoken(rows, one, unit)}
    >
      <line className={styles.limit} x1={x(limit * one)} x2={x(limit * one)} y1={0} y2={height - 18} />
      <text className={styles.tick} x={x(limit * one)} y={height - 5} textAnchor="middle">
        limit {fieldText(limit)} {unit}
      </text>
      {rows.map(({ key, words, from, to, total }, i) => {
        const y = ROW * i;
        const [left, right] = [x(Math.min(from, to)), x(Math.max(from, to))];
        return (
          <g key={key} data-testid={total ? 'waterfall-total' : 'waterfall-step'}>
            <text className={total ? styles.totalName : styles.stepName} x={0} y={y + 19}>
              {shortened(words, total ? 42 : 50)}
              <title>{words}</title>
            </text>
            {!total && <line className={styles.lead} x1={x(from)} x2={x(from)} y1={y - 6} y2={y + 6} />}
            <rect
              className={styles.bar}
              data-kind={total ? 'total' : to < from ? 'less' : 'more'}
              x={left}
              y={y + 6}
              width={Math.max(1, right - left)}
              height={ROW - 12}
            />
            <text className={styles.amount} x={right + 7} y={y + 19} data-testid="waterfall-amount">
              {total ? amountText(to, decimals) : signedText(to - from, decimals)}
            </text>
          </g>
        );
      })}
    </svg>
  );
}

/** @param steps of the last digit shown */
function amountText(steps: number, decimals: number): string {
  return (steps / 10 ** decimals).toFixed(decimals);
}

function signedText(steps: number, decimals: number): string {
  const sign = steps === 0 ? '' : steps < 0 ? '−' : '+';
  return `${sign}${amountText(Math.abs(steps), decimals)}`;
}

function shortened(words: string, most: number): string {
  return words.length > most ? `${words.slice(0, most - 1)}…` : words;
}

function spoken(
  rows: readonly { readonly words: string; readonly from: number; readonly to: number; readonly total: boolean }[],
  one: number,
  unit: string,
): string {
  return rows
    .map(({ words, from, to, total }) =>
      total
        ? `${words}: ${to / one} ${unit}`
        : `${words} ${to < from ? 'takes off' : 'adds'} ${Math.abs(to - from) / one} ${unit}`,
    )
    .join('. ');
}
