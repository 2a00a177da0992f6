import type { Outcome } from '@flathead/solver';
import { useElementSize } from '@mantine/hooks';
import { scaleLinear } from 'd3-scale';
import { declutter } from '../buffers/declutter.ts';
import { fieldText } from '../format/number.ts';
import styles from './chart.module.css';

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
  readonly height?: number;
  readonly testId: string;
  /** Told the index of a point that is pressed. */
  readonly onOpen: (i: number) => void;
}

const MARGIN = { left: 50, right: 22, top: 22, bottom: 38 };
const USUAL_WIDTH = 720;
/** Of the text beside a point, px: width of a letter, height, and its foot over the middle of the point. */
const LETTER = { width: 6.4, height: 14, rise: 11 };

/** Points over a number, against a limit; each opens what it stands for. Outcomes differ by shape as well as by colour. */
export function PointChart(props: PointChartProps) {
  const { points, title, xTitle, yTitle, limit, crossings = [], joined = true, height = 260, testId, onOpen } = props;
  const { ref, width: measured } = useElementSize();
  const width = measured || USUAL_WIDTH;
  const [right, floor] = [width - MARGIN.right, height - MARGIN.bottom];
  const xs = points.map(({ x }) => x);
  const [least, most] = [Math.min(...xs), Math.max(...xs)];
  const pad = most > least ? 0.03 * (most - least) : Math.abs(least) || 1;
  const x = scaleLinear()
    .domain([least - pad, most + pad])
    .range([MARGIN.left, right]);
  const highest = Math.max(...points.map((point) => point.y));
  // Points far below the limit are shown at their own scale.
  const limitShown = highest > limit / 4;
  const y = scaleLinear()
    .domain([0, limitShown ? 1.08 * Math.max(limit, highest) : 1.3 * highest])
    .nice(5)
    .range([floor, MARGIN.top]);
  const limitText = `limit ${fieldText(limit)}${limitShown ? '' : ', far above'}`;
  const limitAt = (limitShown ? y(limit) : MARGIN.top) - 5;
  const places = points.map((point) => {
    const half = ((point.label?.length ?? 0) * LETTER.width) / 2;
    const middle = Math.min(Math.max(x(point.x), MARGIN.left + half), width - half - 2);
    return { x: middle, y: y(point.y) - LETTER.rise, width: 2 * half, height: LETTER.height, weight: 0 };
  });
  const limitWidth = limitText.length * LETTER.width;
  const limitPlace = { x: right - limitWidth / 2, y: limitAt, width: limitWidth, height: LETTER.height, weight: 1 };
  const [, ...hasRoom] = declutter([limitPlace, ...places]);
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
            x={MARGIN.left}
            width={right - MARGIN.left}
            y={y(Math.min(limit, y.domain()[1]))}
            height={floor - y(Math.min(limit, y.domain()[1]))}
          />
          {y.ticks(5).map((tick) => (
            <g key={tick}>
              <line className={styles.grid} x1={MARGIN.left} x2={right} y1={y(tick)} y2={y(tick)} />
              <text className={styles.tick} x={MARGIN.left - 7} y={y(tick) + 3.5} textAnchor="end">
                {fieldText(tick)}
              </text>
            </g>
          ))}
          {x.ticks(Math.max(2, Math.min(12, width / 80))).map((tick) => (
            <g key={tick}>
              <line className={styles.axisLine} x1={x(tick)} x2={x(tick)} y1={floor} y2={floor + 4} />
              <text className={styles.tick} x={x(tick)} y={floor + 16} textAnchor="middle">
                {fieldText(tick).replace('-', '\u2212')}
              </text>
            </g>
          ))}
          <line className={styles.axisLine} x1={MARGIN.left} x2={right} y1={floor} y2={floor} />
          <text className={styles.axis} x={right} y={height - 5} textAnchor="end">
            {xTitle}
          </text>
          <text className={styles.axis} x={4} y={MARGIN.top - 9}>
            {yTitle}
          </text>
          {limitShown && <line className={styles.limit} x1={MARGIN.left} x2={right} y1={y(limit)} y2={y(limit)} />}
          <text className={styles.limitText} x={right} y={limitAt} textAnchor="end">
            {limitText}
          </text>
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
            {point.label !== undefined && hasRoom[i] && (
              <text
                className={styles.pointLabel}
                x={(places[i].x - x(point.x)).toFixed(1)}
                y={-LETTER.rise}
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
