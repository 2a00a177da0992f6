import { fieldText } from '../format/number.ts';
import styles from './start.module.css';

/** From the drawing to the first line of dimensions, from one to the next, and from a line to its number, px. */
const AWAY = { first: 12, next: 15, text: 3 };
/** Of letters and ticks, px. */
const LETTER = 10;
const TICK = 3;

interface DimensionProps {
  /** Under the drawing or, turned, to the left of it. */
  readonly along: 'x' | 'y';
  /** Of what is measured, about the middle of the drawing, mm. */
  readonly size: number;
  /** Of the whole drawing across the line, mm. */
  readonly across: number;
  /** Counted outwards from the drawing. */
  readonly level: number;
  /** One px in mm. */
  readonly unit: number;
}

/** A size outside a drawing: the line from edge to edge, its ends, and the number over it. */
export function Dimension({ along, size, across, level, unit }: DimensionProps) {
  const half = size / 2;
  const y = across / 2 + (AWAY.first + level * AWAY.next) * unit;
  const tick = TICK * unit;
  const ends = [-half, half].map(
    (x) => `M${x} ${across / 2}V${y + tick}M${x - tick} ${y + tick}l${2 * tick} ${-2 * tick}`,
  );
  return (
    <g className={styles.dimension} transform={along === 'y' ? 'rotate(90)' : undefined}>
      <path d={`M${-half} ${y}H${half}${ends.join('')}`} />
      <text
        y={along === 'y' ? -y - AWAY.text * unit : y - AWAY.text * unit}
        transform={along === 'y' ? 'rotate(180)' : undefined}
        fontSize={LETTER * unit}
      >
        {fieldText(size)}
      </text>
    </g>
  );
}

/** Room that some lines of dimensions take on their side of a drawing, px. */
export function roomOf(levels: number, along: 'x' | 'y'): number {
  return AWAY.first + (levels - 1) * AWAY.next + (along === 'x' ? TICK : AWAY.text + LETTER);
}
