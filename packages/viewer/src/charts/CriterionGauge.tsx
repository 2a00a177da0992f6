import type { CriterionVerdict } from '@flathead/solver';
import { scaleLinear } from 'd3-scale';
import { useId } from 'react';
import { OVER, OVER_DARK, RAMP } from '../buffers/ramp.ts';
import styles from './gauge.module.css';

const WIDTH = 232;
const HEIGHT = 26;
const BAR = { y: 11, height: 6 };
/** The scale reaches this share of the limit, or of the value where that is more. */
const REACH = { limit: 1.45, value: 1.12 };

/** A value on the scale of its limit, in the colours of the stage: needle, error whisker, mark of the limit. */
export function CriterionGauge({ criterion }: { criterion: CriterionVerdict }) {
  const { value, limit, error, bound } = criterion;
  const broken = bound === 'most' ? value > limit : value < limit;
  const id = useId();
  const x = scaleLinear()
    .domain([0, Math.max(REACH.limit * limit, REACH.value * (value + (error ?? 0)))])
    .range([1, WIDTH - 1]);
  const [low, high] = [x(Math.max(0, value - (error ?? 0))), x(value + (error ?? 0))];
  const at = x(value);
  return (
    <svg className={styles.gauge} viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
      <defs>
        <linearGradient id={`${id}ramp`}>
          {RAMP.map((colour, i) => (
            <stop key={colour} offset={i / (RAMP.length - 1)} stopColor={colour} />
          ))}
        </linearGradient>
        <pattern id={`${id}over`} width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <rect width="5" height="5" fill={OVER} />
          <rect width="1.6" height="5" fill={OVER_DARK} />
        </pattern>
      </defs>
      <rect className={styles.groove} x={0.5} y={BAR.y} width={WIDTH - 1} height={BAR.height} rx={3} />
      {bound === 'most' && (
        <rect x={1} y={BAR.y} width={x(limit) - 1} height={BAR.height} rx={2} fill={`url(#${id}ramp)`} />
      )}
      {broken && (
        <rect
          x={Math.min(x(limit), at)}
          y={BAR.y}
          width={Math.abs(at - x(limit))}
          height={BAR.height}
          fill={`url(#${id}over)`}
        />
      )}
      <line className={styles.limit} x1={x(limit)} x2={x(limit)} y1={BAR.y - 5} y2={BAR.y + BAR.height + 5} />
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
