import { useElementSize } from '@mantine/hooks';
import { scaleLinear } from 'd3-scale';
import { fieldText, micrometreDigits } from '../format/number.ts';
import styles from './budget.module.css';
import type { BudgetFigures, BudgetLine } from './budget-figures.ts';

const USUAL_WIDTH = 900;
const LABEL = 92;
const BAR = 30;
const LETTER = 6.3;

/** Shares of the contributors end to end, as they are expected to add up and at worst, against the limit. */
export function ShareBars({ figures }: { figures: BudgetFigures }) {
  const { lines, sums, limit } = figures;
  const { ref, width: measured } = useElementSize();
  const width = measured || USUAL_WIDTH;
  const x = scaleLinear()
    .domain([0, 1.04 * Math.max(limit, sums.worstCase)])
    .range([LABEL, width - 12]);
  const systematic = lines.filter(({ adds }) => adds === 'systematic');
  const independent = lines.filter(({ adds }) => adds === 'independent');
  // Of a root of a sum of squares each has its square's share.
  const squares = independent.map((line) => ({
    line,
    length: sums.independent === 0 ? 0 : line.value ** 2 / sums.independent,
  }));
  const plain = (line: BudgetLine) => ({ line, length: line.value });
  const rows = [
    { name: 'Expected', parts: [...systematic.map(plain), ...squares] },
    { name: 'Worst case', parts: [...systematic, ...independent].map(plain) },
  ];
  const height = rows.length * (BAR + 14) + 34;
  return (
    <div ref={ref} className={styles.bars}>
      <svg
        width={width}
        height={height}
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label={`Shares of the budget of ${fieldText(limit * 1000)} micrometres: ${lines
          .map(({ name, value }) => `${name} ${micrometreDigits(value)}`)
          .join(', ')}`}
      >
        {rows.map(({ name, parts }, r) => {
          const top = 20 + r * (BAR + 14);
          let from = 0;
          return (
            <g key={name}>
              <text className={styles.rowName} x={LABEL - 12} y={top + BAR / 2 + 4} textAnchor="end">
                {name}
              </text>
              {parts.map(({ line, length }, i) => {
                const left = x(from);
                from += length;
                const span = x(from) - left;
                const fits = line.name.length * LETTER + 10 < span;
                return (
                  // biome-ignore lint/suspicious/noArrayIndexKey: a share is its place
                  <g key={i}>
                    <title>{`${line.name}: ${micrometreDigits(line.value)} µm, ${line.adds}`}</title>
                    <rect
                      className={styles.share}
                      data-adds={line.adds}
                      data-odd={i % 2 === 1 || undefined}
                      x={left}
                      y={top}
                      width={Math.max(0, span - 1)}
                      height={BAR}
                    />
                    {fits && (
                      <text className={styles.shareName} data-adds={line.adds} x={left + 7} y={top + BAR / 2 + 4}>
                        {line.name}
                      </text>
                    )}
                  </g>
                );
              })}
            </g>
          );
        })}
        <line className={styles.limitLine} x1={x(limit)} x2={x(limit)} y1={14} y2={height - 18} />
        <text className={styles.limitText} x={x(limit)} y={10} textAnchor="middle">
          limit {fieldText(limit * 1000)}
        </text>
        {x.ticks(6).map((tick) => (
          <text key={tick} className={styles.tick} x={x(tick)} y={height - 4} textAnchor="middle">
            {fieldText(tick * 1000)}
          </text>
        ))}
      </svg>
      <p className={styles.key} aria-hidden="true">
        <i data-adds="systematic" /> systematic <i data-adds="independent" /> independent; in <q>Expected</q> each has
        its share of the root-sum-square
      </p>
    </div>
  );
}
