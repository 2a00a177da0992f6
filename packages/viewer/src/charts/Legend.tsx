import { useId } from 'react';
import { isoLevels } from '../buffers/iso-levels.ts';
import { OVER, OVER_DARK, RAMP } from '../buffers/ramp.ts';
import { fieldText } from '../format/number.ts';
import styles from './legend.module.css';

const WIDTH = 236;
const BAR = { y: 18, height: 10 };
/** Share of the width up to the limit; the rest is hatched. */
const LIMIT_AT = 196;
/** Ticks nearer to the limit than this are left to its own label, px. */
const CLEAR = 17;

/** Colours of the stage: from zero to the limit with the iso-lines drawn, hatched beyond. @param limit mm */
export function Legend({ limit }: { limit: number }) {
  const id = useId();
  const at = (level: number): number => 1 + (level / limit) * (LIMIT_AT - 1);
  const levels = isoLevels(limit, limit).filter((level) => level < limit * 0.999);
  return (
    <figure className={styles.legend} aria-label={`Colours from zero to the limit of ${fieldText(limit * 1000)} µm`}>
      <figcaption className={styles.caption}>Bow against the limit, µm</figcaption>
      <svg viewBox={`0 0 ${WIDTH} 42`} className={styles.scale} aria-hidden="true">
        <defs>
          <linearGradient id={`${id}ramp`}>
            {RAMP.map((colour, i) => (
              <stop key={colour} offset={i / (RAMP.length - 1)} stopColor={colour} />
            ))}
          </linearGradient>
          <pattern id={`${id}over`} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
            <rect width="6" height="6" fill={OVER} />
            <rect width="2" height="6" fill={OVER_DARK} />
          </pattern>
        </defs>
        <rect x={1} y={BAR.y} width={LIMIT_AT - 1} height={BAR.height} fill={`url(#${id}ramp)`} />
        <rect x={LIMIT_AT} y={BAR.y} width={WIDTH - LIMIT_AT - 1} height={BAR.height} fill={`url(#${id}over)`} />
        <rect className={styles.frame} x={0.5} y={BAR.y - 0.5} width={WIDTH - 1} height={BAR.height + 1} rx={2} />
        {levels.slice(1).map((level, i) => (
          <line
            key={level}
            className={i < levels.length * 0.5 ? styles.isoDark : styles.isoLight}
            x1={at(level)}
            x2={at(level)}
            y1={BAR.y}
            y2={BAR.y + BAR.height}
          />
        ))}
        {levels.map((level) =>
          LIMIT_AT - at(level) < CLEAR && level > 0 ? null : (
            <text
              key={level}
              className={styles.tick}
              x={at(level)}
              y={BAR.y + BAR.height + 12}
              textAnchor={level === 0 ? 'start' : 'middle'}
            >
              {fieldText(level * 1000)}
            </text>
          ),
        )}
        <path className={styles.limit} d={`M${LIMIT_AT} ${BAR.y - 5}V${BAR.y + BAR.height + 3}`} />
        <text className={styles.limitText} x={LIMIT_AT} y={BAR.y - 8} textAnchor="middle">
          limit {fieldText(limit * 1000)}
        </text>
        <text className={styles.tick} x={WIDTH} y={BAR.y + BAR.height + 12} textAnchor="end">
          over
        </text>
      </svg>
    </figure>
  );
}
