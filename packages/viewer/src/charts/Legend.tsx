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

interface LegendProps {
  /** Where the colours end, in units of the model. */
  readonly top: number;
  /** Whether that is a limit, beyond which is hatched. */
  readonly limited: boolean;
  readonly caption: string;
  readonly unit: string;
  /** Shown value over that of the model. */
  readonly scale: number;
}

/** Colours of the stage: from zero to the limit with the iso-lines drawn, hatched beyond. */
export function Legend({ top: limit, limited, caption, unit, scale }: LegendProps) {
  const id = useId();
  const end = limited ? LIMIT_AT : WIDTH - 1;
  const most = fieldText(Number((limit * scale).toPrecision(3)));
  const at = (level: number): number => 1 + (level / limit) * (end - 1);
  const levels = isoLevels(limit, limit).filter((level) => level < limit * 0.999);
  return (
    <figure
      className={styles.legend}
      aria-label={`Colours from zero to ${limited ? 'the limit of ' : ''}${most} ${unit}`}
    >
      <figcaption className={styles.caption}>{caption}</figcaption>
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
        <rect x={1} y={BAR.y} width={end - 1} height={BAR.height} fill={`url(#${id}ramp)`} />
        {limited && (
          <rect x={LIMIT_AT} y={BAR.y} width={WIDTH - LIMIT_AT - 1} height={BAR.height} fill={`url(#${id}over)`} />
        )}
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
          end - at(level) < CLEAR + (limited ? 0 : CLEAR) && level > 0 ? null : (
            <text
              key={level}
              className={styles.tick}
              x={at(level)}
              y={BAR.y + BAR.height + 12}
              textAnchor={level === 0 ? 'start' : 'middle'}
            >
              {fieldText(level * scale)}
            </text>
          ),
        )}
        {limited ? (
          <>
            <path className={styles.limit} d={`M${LIMIT_AT} ${BAR.y - 5}V${BAR.y + BAR.height + 3}`} />
            <text className={styles.limitText} x={LIMIT_AT} y={BAR.y - 8} textAnchor="middle">
              limit {most}
            </text>
            <text className={styles.tick} x={WIDTH} y={BAR.y + BAR.height + 12} textAnchor="end">
              over
            </text>
          </>
        ) : (
          <text className={styles.tick} x={WIDTH} y={BAR.y + BAR.height + 12} textAnchor="end">
            {most}
          </text>
        )}
      </svg>
    </figure>
  );
}
