import { useId } from 'react';
import type { ColourScale } from '../buffers/colour-scale.ts';
import { isoStep } from '../buffers/iso-levels.ts';
import { BEYOND, RAMP, TO_LIMIT, TO_LIMIT_BELOW } from '../buffers/ramp.ts';
import { fieldText } from '../format/number.ts';
import { HatchPattern, RampGradient } from './ColourDefs.tsx';
import styles from './legend.module.css';
import { axisOf, labelled, levelsWithin } from './legend-axis.ts';

const WIDTH = 236;
const BAR = { y: 20, height: 11 };
/** Under the bar, px. */
const TEXT_AT = BAR.y + BAR.height + 12;

interface LegendProps {
  readonly scale: ColourScale;
  readonly caption: string;
  readonly unit: string;
  /** Shown value over that of the scale. */
  readonly factor: number;
  /** Towards the board and away from it, each with its own colours; for a scale with a limit. */
  readonly signed?: boolean;
  /** What is told is what a value leaves of this; the value itself if left out. */
  readonly leftOf?: number;
}

/** What the colours mean: from zero to the limit with the iso-lines drawn, and hatched from there to the largest shown. */
export function Legend({ scale, caption, unit, factor, signed = false, leftOf }: LegendProps) {
  const id = useId();
  const { limit, top, largest } = scale;
  const text = (value: number): string => legendText(value, factor, leftOf);
  const both = signed && limit !== null;
  const axis = axisOf(scale, WIDTH, both);
  const senses = both ? [-1, 1] : [1];
  const [zero, end] = [axis(0), axis(limit ?? top)];
  const levels = levelsWithin(limit ?? top, isoStep(limit ?? top));
  const ticks = labelled(scale, axis, text, both);
  const from = leftOf === undefined ? 'zero' : text(0);
  const name = limit === null ? `${from} to ${text(top)} ${unit}` : `${from} to the limit of ${text(limit)} ${unit}`;
  return (
    <figure
      className={styles.legend}
      aria-label={
        both
          ? `Colours to ${text(limit)} ${unit} towards the board and away from it, hatched beyond to ${text(top)}`
          : `Colours from ${name}${limit === null ? '' : `, hatched beyond to ${text(top)} ${unit}`}`
      }
    >
      <figcaption className={styles.caption}>{caption}</figcaption>
      <svg viewBox={`0 0 ${WIDTH} 46`} className={styles.scale} aria-hidden="true">
        <defs>
          <RampGradient id={`${id}1`} colours={limit === null ? RAMP : TO_LIMIT} />
          <RampGradient id={`${id}-1`} colours={TO_LIMIT_BELOW.toReversed()} />
          <RampGradient id={`${id}over1`} colours={BEYOND} />
          <RampGradient id={`${id}over-1`} colours={BEYOND.toReversed()} />
          <HatchPattern id={`${id}hatch1`} />
          <HatchPattern id={`${id}hatch-1`} back />
        </defs>
        {senses.map((sense) => {
          const within = span(zero, axis(sense * (limit ?? top)));
          const beyond = span(axis(sense * (limit ?? top)), axis(sense * top));
          return (
            <g key={sense}>
              <rect {...within} y={BAR.y} height={BAR.height} fill={`url(#${id}${sense})`} />
              {limit !== null && (
                <>
                  <rect {...beyond} y={BAR.y} height={BAR.height} fill={`url(#${id}over${sense})`} />
                  <rect {...beyond} y={BAR.y} height={BAR.height} fill={`url(#${id}hatch${sense})`} />
                </>
              )}
            </g>
          );
        })}
        <rect className={styles.frame} x={0.5} y={BAR.y - 0.5} width={WIDTH - 1} height={BAR.height + 1} rx={2} />
        {!both &&
          levels.map((level) => (
            <line
              key={level}
              className={limit === null && level > 0.55 * top ? styles.isoLight : styles.isoDark}
              x1={axis(level)}
              x2={axis(level)}
              y1={BAR.y}
              y2={BAR.y + BAR.height}
            />
          ))}
        {ticks.map(({ value, anchor }) => (
          <text key={value} className={styles.tick} x={axis(value)} y={TEXT_AT} textAnchor={anchor}>
            {both && value > 0 ? '+' : ''}
            {text(value).replace('-', '\u2212')}
          </text>
        ))}
        {limit !== null && (
          <>
            {senses.map((sense) => (
              <path
                key={sense}
                className={styles.limit}
                d={`M${axis(sense * limit)} ${BAR.y - 4}V${BAR.y + BAR.height + 3}`}
              />
            ))}
            <text
              className={styles.limitText}
              x={both ? WIDTH - 1 : end}
              y={BAR.y - 7}
              textAnchor={both ? 'end' : 'middle'}
            >
              limit {both ? '\u00b1' : ''}
              {text(limit)}
            </text>
          </>
        )}
        {!both && limit !== null && largest > limit && (
          <path className={styles.worst} d={`M${axis(largest)} ${BAR.y - 1}l-3.5 -5.5h7z`} />
        )}
      </svg>
    </figure>
  );
}

/** What stands under the bar at a value of the scale. */
export function legendText(value: number, factor: number, leftOf?: number): string {
  const told = leftOf === undefined ? value : Math.max(0, leftOf - value);
  return fieldText(Number((told * factor).toPrecision(3)));
}

function span(a: number, b: number): { readonly x: number; readonly width: number } {
  return { x: Math.min(a, b), width: Math.abs(b - a) };
}
