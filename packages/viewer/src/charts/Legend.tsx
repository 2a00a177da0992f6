import { useId } from 'react';
import { isoLevels } from '../buffers/iso-levels.ts';
import { OVER, OVER_DARK, RAMP, SIGNED_RAMP } from '../buffers/ramp.ts';
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
  /** From the limit towards the board to the limit away from it, each with its own colours. */
  readonly signed?: boolean;
}

/** Where the limits of a signed scale are, px. */
const ENDS = { low: 34, high: WIDTH - 34 };

function SignedLegend({
  limit,
  caption,
  unit,
  scale,
}: Omit<LegendProps, 'top' | 'limited' | 'signed'> & { readonly limit: number }) {
  const id = useId();
  const most = fieldText(Number((limit * scale).toPrecision(3)));
  const middle = (ENDS.low + ENDS.high) / 2;

  return (
    <figure
      className={styles.legend}
      aria-label={`Colours from ${most} ${unit} towards the board to ${most} ${unit} away`}
    >
      <figcaption className={styles.caption}>{caption}</figcaption>
      <svg viewBox={`0 0 ${WIDTH} 42`} className={styles.scale} aria-hidden="true">
        <defs>
          <linearGradient id={`${id}ramp`}>
            {SIGNED_RAMP.map((colour, i) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a stop is its place
              <stop key={i} offset={i / (SIGNED_RAMP.length - 1)} stopColor={colour} />
            ))}
          </linearGradient>
          <pattern id={`${id}over`} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
            <rect width="6" height="6" fill={OVER} />
            <rect width="2" height="6" fill={OVER_DARK} />
          </pattern>
        </defs>
        <rect x={1} y={BAR.y} width={WIDTH - 2} height={BAR.height} fill={`url(#${id}over)`} />
        <rect x={ENDS.low} y={BAR.y} width={ENDS.high - ENDS.low} height={BAR.height} fill={`url(#${id}ramp)`} />
        <rect className={styles.frame} x={0.5} y={BAR.y - 0.5} width={WIDTH - 1} height={BAR.height + 1} rx={2} />
        {[ENDS.low, ENDS.high].map((x) => (
          <path key={x} className={styles.limit} d={`M${x} ${BAR.y - 3}V${BAR.y + BAR.height + 3}`} />
        ))}
        <text className={styles.tick} x={ENDS.low} y={BAR.y + BAR.height + 12} textAnchor="middle">
          {'\u2212'}
          {most}
        </text>
        <text className={styles.tick} x={middle} y={BAR.y + BAR.height + 12} textAnchor="middle">
          0
        </text>
        <text className={styles.tick} x={ENDS.high} y={BAR.y + BAR.height + 12} textAnchor="middle">
          +{most}
        </text>
      </svg>
    </figure>
  );
}

/** Colours of the stage: from zero to the limit with the iso-lines drawn, hatched beyond. */
export function Legend({ top: limit, limited, caption, unit, scale, signed = false }: LegendProps) {
  const id = useId();
  if (signed) return <SignedLegend limit={limit} caption={caption} unit={unit} scale={scale} />;
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
