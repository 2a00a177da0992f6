import type { CriterionVerdict } from '@flathead/solver';
import { scaleLinear, scaleLog } from 'd3-scale';
import { useId } from 'react';
import { limitScale } from '../buffers/colour-scale.ts';
import { BEYOND, TO_LIMIT } from '../buffers/ramp.ts';
import { HatchPattern, RampGradient } from './ColourDefs.tsx';
import styles from './gauge.module.css';

const WIDTH = 232;
const HEIGHT = 26;
const BAR = { y: 11, height: 6 };
/** The scale reaches this share of the limit, or of the value where that is more. */
const REACH = { limit: 1.45, value: 1.12 };

/** Where the line between the ends of a bracketed joint runs. */
const BELOW = 22;
/** Powers of ten below the limit that the scale of a probability shows, and above. */
const POWERS = { below: 6, above: 2 };

/** A value on the scale of its limit, in the colours of the stage: needle, error whisker, mark of the limit. */
export function CriterionGauge({ criterion }: { criterion: CriterionVerdict }) {
  const { value, limit, error, bound, bracket } = criterion;
  const broken = bound === 'most' ? value > limit : value < limit;
  const id = useId();
  const x = criterion.criterion === 'failureProbability' ? powersOfTen(criterion) : evenly(criterion);
  const [low, high] = [x(Math.max(0, value - (error ?? 0))), x(value + (error ?? 0))];
  const at = x(value);
  const beyond = { x: Math.min(x(limit), at), y: BAR.y, width: Math.abs(at - x(limit)), height: BAR.height };
  const dark = bound === 'most' ? x(limitScale(limit, value).top) : 0;
  const colours = { ...beyond, x: Math.min(x(limit), dark), width: Math.abs(dark - x(limit)) };
  return (
    <svg className={styles.gauge} viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
      <defs>
        <RampGradient id={`${id}ramp`} colours={TO_LIMIT} />
        <RampGradient id={`${id}over`} colours={BEYOND} />
        <HatchPattern id={`${id}hatch`} />
        <clipPath id={`${id}broken`}>
          <rect {...beyond} />
        </clipPath>
      </defs>
      <rect className={styles.groove} x={0.5} y={BAR.y} width={WIDTH - 1} height={BAR.height} rx={3} />
      {bound === 'most' && (
        <rect x={1} y={BAR.y} width={x(limit) - 1} height={BAR.height} rx={2} fill={`url(#${id}ramp)`} />
      )}
      {broken && (
        <g clipPath={`url(#${id}broken)`}>
          {/* As far as the colours of the stage go; a minimum has them from itself down to none. */}
          <rect
            {...colours}
            transform={bound === 'most' ? undefined : `rotate(180 ${x(limit) / 2} ${BAR.y + BAR.height / 2})`}
            fill={`url(#${id}over)`}
          />
          <rect {...beyond} fill={`url(#${id}hatch)`} />
        </g>
      )}
      <line className={styles.limit} x1={x(limit)} x2={x(limit)} y1={BAR.y - 5} y2={BAR.y + BAR.height + 5} />
      {bracket !== null && (
        <path
          className={styles.bracket}
          d={`M${x(bracket.sliding)} ${BELOW - 3}v6M${x(bracket.bonded)} ${BELOW - 3}v6M${x(bracket.sliding)} ${BELOW}H${x(bracket.bonded)}`}
        />
      )}
      {error !== null && (
        <path
          className={styles.whisker}
          d={`M${low} ${BAR.y - 4.5}H${high}M${low} ${BAR.y - 7}v5M${high} ${BAR.y - 7}v5`}
        />
      )}
      <path className={styles.needle} d={`M${at} ${BAR.y - 3}l-4 -7h8z`} />
      <line className={styles.stem} x1={at} x2={at} y1={BAR.y - 4} y2={BAR.y + BAR.height + 3} />
    </svg>
  );
}

function evenly({ value, limit, error, bracket }: CriterionVerdict): (amount: number) => number {
  const ends = bracket === null ? [] : [bracket.sliding, bracket.bonded];
  return scaleLinear()
    .domain([0, Math.max(REACH.limit * limit, REACH.value * Math.max(value + (error ?? 0), ...ends))])
    .range([1, WIDTH - 1]);
}

function powersOfTen({ limit }: CriterionVerdict): (amount: number) => number {
  return scaleLog()
    .domain([limit / 10 ** POWERS.below, limit * 10 ** POWERS.above])
    .range([1, WIDTH - 1])
    .clamp(true);
}
