import { useElementSize } from '@mantine/hooks';
import { scaleLinear } from 'd3-scale';
import { fieldText } from '../format/number.ts';
import styles from './chart.module.css';

interface HistogramProps {
  readonly values: readonly number[];
  readonly limit: number;
  readonly bound: 'most' | 'least';
  readonly title: string;
  readonly xTitle: string;
  /** Values marked on the axis, such as quantiles. */
  readonly marks: readonly { readonly at: number; readonly label: string }[];
  readonly height?: number;
}

const MARGIN = { left: 44, right: 22, top: 60, bottom: 38 };
const USUAL_WIDTH = 720;
const MOST_BINS = 24;
/** Room for a label of a mark, and height of a line of them. */
const [LABEL, LINE] = [38, 12];

/** How often a figure comes, against its limit; what is beyond is hatched. */
export function Histogram({ values, limit, bound, title, xTitle, marks, height = 256 }: HistogramProps) {
  const { ref, width: measured } = useElementSize();
  const width = measured || USUAL_WIDTH;
  const [right, floor] = [width - MARGIN.right, height - MARGIN.bottom];
  const bins = binned(values, limit);
  const most = Math.max(1, ...bins.map(({ count }) => count));
  const ends = [...bins.flatMap(({ from, to }) => [from, to]), limit];
  const [low, high] = [Math.min(...ends), Math.max(...ends)];
  const pad = 0.04 * (high - low || 1);
  const x = scaleLinear()
    .domain([low - pad, high + pad])
    .range([MARGIN.left, right]);
  const y = scaleLinear().domain([0, most]).nice(4).range([floor, MARGIN.top]);
  const levels = labelLevels(marks.map(({ at }) => x(at)));
  const whole = y.ticks(4).filter(Number.isInteger);
  return (
    <div ref={ref} className={styles.plot}>
      <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} role="img" aria-label={title}>
        <defs>
          <pattern id="histogram-over" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
            <rect className={styles.over} width="6" height="6" />
            <rect className={styles.overStripe} width="2" height="6" />
          </pattern>
        </defs>
        {whole.map((tick) => (
          <g key={tick}>
            <line className={styles.grid} x1={MARGIN.left} x2={right} y1={y(tick)} y2={y(tick)} />
            <text className={styles.tick} x={MARGIN.left - 7} y={y(tick) + 3.5} textAnchor="end">
              {tick}
            </text>
          </g>
        ))}
        {bins.map(({ from, to, count }) => {
          const isOver = bound === 'most' ? from >= limit : to <= limit;
          return (
            <rect
              key={from}
              className={styles.bar}
              x={x(from) + 0.75}
              width={Math.max(0.5, x(to) - x(from) - 1.5)}
              y={y(count)}
              height={floor - y(count)}
              fill={isOver ? 'url(#histogram-over)' : undefined}
              data-over={isOver || undefined}
            />
          );
        })}
        <line className={styles.axisLine} x1={MARGIN.left} x2={right} y1={floor} y2={floor} />
        {x.ticks(Math.max(2, Math.min(10, width / 90))).map((tick) => (
          <text key={tick} className={styles.tick} x={x(tick)} y={floor + 16} textAnchor="middle">
            {fieldText(tick)}
          </text>
        ))}
        <text className={styles.axis} x={right} y={height - 5} textAnchor="end">
          {xTitle}
        </text>
        <text className={styles.axis} x={4} y={MARGIN.top - 20}>
          heads
        </text>
        {marks.map(({ at, label }, i) => (
          <g key={label}>
            <line className={styles.quantile} x1={x(at)} x2={x(at)} y1={MARGIN.top - 6} y2={floor} />
            <text className={styles.tick} x={x(at)} y={MARGIN.top - 9 - LINE * (levels[i] ?? 0)} textAnchor="middle">
              {label}
            </text>
          </g>
        ))}
        <line className={styles.limit} x1={x(limit)} x2={x(limit)} y1={MARGIN.top - 44} y2={floor} />
        <text
          className={styles.limitText}
          x={x(limit) + (x(limit) > width / 2 ? -4 : 4)}
          y={MARGIN.top - 48}
          textAnchor={x(limit) > width / 2 ? 'end' : 'start'}
        >
          limit {fieldText(limit)}
        </text>
      </svg>
    </div>
  );
}

/** Lines for labels centred at places along an axis, so that none is on another: the lowest that has room. */
export function labelLevels(places: readonly number[]): number[] {
  const levels: number[] = [];
  for (const [i, at] of places.entries()) {
    let level = 0;
    while (places.some((other, k) => k < i && levels[k] === level && Math.abs(other - at) < LABEL)) level++;
    levels.push(level);
  }
  return levels;
}

/** Bins of one width, about the square root of the values many; one edge lies on the limit. */
export function binned(values: readonly number[], limit: number) {
  if (values.length === 0) return [];
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const wanted = Math.min(MOST_BINS, Math.max(5, Math.ceil(Math.sqrt(values.length))));
  const size = (most - least) / wanted || Math.abs(most) / 100 || 1;
  const first = Math.floor((least - limit) / size);
  const last = Math.max(first, Math.ceil((most - limit) / size) - 1);
  const counts = new Array<number>(last - first + 1).fill(0);
  for (const value of values) {
    // On the edge of two bins a value belongs to the lower: at the limit it still passes.
    const bin = Math.ceil((value - limit) / size) - 1;
    counts[Math.min(last, Math.max(first, bin)) - first]++;
  }
  return counts.map((count, k) => ({ from: limit + (first + k) * size, to: limit + (first + k + 1) * size, count }));
}
