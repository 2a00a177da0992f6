import type { Outcome } from '@flathead/solver';
import { useElementSize } from '@mantine/hooks';
import { fieldText } from '../format/number.ts';
import styles from './chart.module.css';
import { pointLayout } from './point-layout.ts';

export interface ChartPoint {
  readonly x: number;
  readonly y: number;
  /** Stands beside the point. */
  readonly label?: string;
  readonly outcome: Outcome;
  /** What it is, for its tip and for those who do not see it. */
  readonly words: string;
}

interface PointChartProps {
  readonly points: readonly ChartPoint[];
  /** What is shown, for those who do not see it. */
  readonly title: string;
  readonly xTitle: string;
  readonly yTitle: string;
  /** Most that y may be. */
  readonly limit: number;
  /** Values of x where the limit is met. */
  readonly crossings?: readonly number[];
  /** Whether the points are of one curve. */
  readonly joined?: boolean;
  /** Values of x that have a tick, where there is room; round numbers if left out. */
  readonly ticks?: readonly number[];
  /** Value of x of the head as it is. */
  readonly now?: number | undefined;
  readonly testId: string;
  /** Told the index of a point that is pressed. */
  readonly onOpen: (i: number) => void;
}

/** From the middle of a line of text down to its foot, px. */
const FOOT = 4;
const USUAL_WIDTH = 720;
/** Of a chart without a height of its own: share of its width, and bounds, px. */
const TALL = { share: 0.34, least: 260, most: 460 };

/** Points over a number, against a limit; each opens what it stands for. Outcomes differ by shape as well as by colour. */
export function PointChart(props: PointChartProps) {
  const {
    points,
    title,
    xTitle,
    yTitle,
    limit,
    crossings = [],
    joined = true,
    ticks: wanted,
    now,
    testId,
    onOpen,
  } = props;
  const { ref, width: measured } = useElementSize();
  const width = measured || USUAL_WIDTH;
  const height = Math.round(Math.min(TALL.most, Math.max(TALL.least, TALL.share * width)));
  const layout = pointLayout(points, limit, { width, height, joined, wanted, others: now === undefined ? [] : [now] });
  const { left, right, top, floor, x, y, ticks, limitShown, labels } = layout;
  return (
    <div ref={ref} className={styles.plot}>
      {/* biome-ignore lint/a11y/useSemanticElements: a group of buttons within a picture */}
      <svg
        width={width}
        height={height}
        viewBox={`0 0 ${width} ${height}`}
        role="group"
        aria-label={title}
        data-testid={testId}
      >
        {/* biome-ignore lint/a11y/noAriaHiddenOnFocusable: nothing in it takes the focus */}
        <g aria-hidden="true">
          <rect
            className={styles.band}
            x={left}
            width={right - left}
            y={y(Math.min(limit, y.domain()[1]))}
            height={floor - y(Math.min(limit, y.domain()[1]))}
          />
          {y.ticks(5).map((tick) => (
            <g key={tick}>
              <line className={styles.grid} x1={left} x2={right} y1={y(tick)} y2={y(tick)} />
              <text className={styles.tick} x={left - 7} y={y(tick) + 3.5} textAnchor="end">
                {fieldText(tick)}
              </text>
            </g>
          ))}
          {ticks.map((tick) => (
            <g key={tick}>
              <line className={styles.axisLine} x1={x(tick)} x2={x(tick)} y1={floor} y2={floor + 4} />
              <text className={styles.tick} x={x(tick)} y={floor + 16} textAnchor="middle">
                {fieldText(tick).replace('-', '\u2212')}
              </text>
            </g>
          ))}
          <line className={styles.axisLine} x1={left} x2={right} y1={floor} y2={floor} />
          <text className={styles.axis} x={right} y={height - 5} textAnchor="end">
            {xTitle}
          </text>
          <text className={styles.axis} x={4} y={top - 9}>
            {yTitle}
          </text>
          {limitShown && <line className={styles.limit} x1={left} x2={right} y1={y(limit)} y2={y(limit)} />}
          <text
            className={styles.limitText}
            x={layout.limit.place.x}
            y={layout.limit.place.y + FOOT}
            textAnchor="middle"
          >
            {layout.limit.text}
          </text>
          {now !== undefined && (
            <g className={styles.now}>
              <line x1={x(now)} x2={x(now)} y1={top} y2={floor} />
              <text x={Math.max(x(now), 2 * left)} y={top - 9} textAnchor="middle">
                now {fieldText(now)}
              </text>
            </g>
          )}
          {crossings.map((at) => (
            <g key={at} className={styles.crossing}>
              <line x1={x(at)} x2={x(at)} y1={y(limit)} y2={floor} />
              <path className={styles.mark} d={`M${x(at)} ${y(limit) - 5}l5 5l-5 5l-5 -5z`} />
            </g>
          ))}
          {joined && points.length > 1 && (
            <path
              className={styles.line}
              d={points
                .toSorted((a, b) => a.x - b.x)
                .map((point, i) => `${i === 0 ? 'M' : 'L'}${x(point.x).toFixed(1)} ${y(point.y).toFixed(1)}`)
                .join('')}
            />
          )}
        </g>
        {points.map((point, i) => (
          // biome-ignore lint/a11y/useSemanticElements: a button cannot stand in a picture
          <g
            // biome-ignore lint/suspicious/noArrayIndexKey: a point is its place
            key={i}
            role="button"
            tabIndex={0}
            className={styles.point}
            data-outcome={point.outcome}
            aria-label={`${point.words}. Opens as a variant.`}
            transform={`translate(${x(point.x).toFixed(1)} ${y(point.y).toFixed(1)})`}
            onClick={() => onOpen(i)}
            onKeyDown={(event) => {
              if (event.key !== 'Enter' && event.key !== ' ') return;
              event.preventDefault();
              onOpen(i);
            }}
          >
            <title>{`${point.words}. Press to open it as a variant.`}</title>
            <circle className={styles.reach} r={13} />
            <path className={styles.dot} d={SHAPES[point.outcome]} />
            {labels[i] !== null && (
              <text
                className={styles.pointLabel}
                x={(labels[i].x - x(point.x)).toFixed(1)}
                y={(labels[i].y - y(point.y) + FOOT).toFixed(1)}
                textAnchor="middle"
              >
                {point.label}
              </text>
            )}
          </g>
        ))}
      </svg>
    </div>
  );
}

const SHAPES: Readonly<Record<Outcome, string>> = {
  pass: 'M-5 0a5 5 0 1 0 10 0a5 5 0 1 0 -10 0',
  marginal: 'M0 -6.5l6.5 6.5l-6.5 6.5l-6.5 -6.5z',
  fail: 'M-5 -5h10v10h-10z',
};
