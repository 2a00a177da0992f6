import { useElementSize } from '@mantine/hooks';
import { scaleLinear } from 'd3-scale';
import styles from './chart.module.css';

export interface TornadoBar {
  readonly cause: string;
  readonly first: number;
  readonly firstError: number;
  readonly total: number;
  readonly totalError: number;
}

interface TornadoChartProps {
  /** The most important first. */
  readonly bars: readonly TornadoBar[];
  readonly title: string;
}

const LABEL = 150;
const ROW = 34;
const USUAL_WIDTH = 720;

/** Share of the variance that each cause has, by itself and in all, with the errors of both, cut at none and at all of it. */
export function TornadoChart({ bars, title }: TornadoChartProps) {
  const { ref, width: measured } = useElementSize();
  const width = measured || USUAL_WIDTH;
  const height = bars.length * ROW + 30;
  const x = scaleLinear()
    .domain([0, 1])
    .range([LABEL, width - 64])
    .clamp(true);
  return (
    <div ref={ref} className={styles.plot}>
      <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} role="img" aria-label={title}>
        {x.ticks(5).map((tick) => (
          <g key={tick}>
            <line className={styles.grid} x1={x(tick)} x2={x(tick)} y1={4} y2={height - 24} />
            <text className={styles.tick} x={x(tick)} y={height - 10} textAnchor="middle">
              {Math.round(100 * tick)} %
            </text>
          </g>
        ))}
        {bars.map(({ cause, first, firstError, total, totalError }, i) => {
          const top = i * ROW + 6;
          const text = `${Math.round(100 * Math.min(1, Math.max(0, total)))} %`;
          return (
            <g key={cause}>
              <text className={styles.cause} x={LABEL - 10} y={top + 15} textAnchor="end">
                {cause.length > 22 ? `${cause.slice(0, 21)}…` : cause}
              </text>
              <rect className={styles.total} x={x(0)} y={top} width={x(total) - x(0)} height={14} rx={2} />
              <rect className={styles.first} x={x(0)} y={top + 14} width={x(first) - x(0)} height={7} rx={2} />
              <path className={styles.whisker} d={whisker(x, total, totalError, top + 7)} />
              <path className={styles.whisker} d={whisker(x, first, firstError, top + 17.5)} />
              <text className={styles.share} x={Math.max(x(total), x(total + totalError)) + 7} y={top + 11}>
                {text}
              </text>
            </g>
          );
        })}
        <line className={styles.axisLine} x1={x(0)} x2={x(0)} y1={4} y2={height - 24} />
      </svg>
    </div>
  );
}

function whisker(x: (share: number) => number, value: number, error: number, y: number): string {
  const [low, high] = [x(value - error), x(value + error)];
  return `M${low} ${y}H${high}M${low} ${y - 3}v6M${high} ${y - 3}v6`;
}
