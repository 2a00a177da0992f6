import type { ColourScale } from '../buffers/colour-scale.ts';
import { isoStep } from '../buffers/iso-levels.ts';

/** Least and largest share of the width up to the limit. */
const SHARE = { least: 0.42, most: 0.8 };
/** Room of a character of a tick, and between two ticks, px. */
const ROOM = { letter: 6, gap: 5 };

/** A number under the bar of colours. */
interface Tick {
  readonly value: number;
  readonly anchor: 'start' | 'middle' | 'end';
}

/**
 * Place of a value on the bar of colours, px.
 *
 * Even from zero to the limit and even beyond it. One length for both where each part has room; else the smaller is drawn
 * larger.
 *
 * @param both from minus the top to the top
 */
export function axisOf(
  { limit, top }: Pick<ColourScale, 'limit' | 'top'>,
  width: number,
  both = false,
): (value: number) => number {
  const room = both ? width / 2 : width;
  const zero = both ? width / 2 : 0;
  const end = limit ?? top;
  const share = limit === null ? 1 : Math.min(SHARE.most, Math.max(SHARE.least, limit / top));
  return (value) => {
    const size = Math.abs(value);
    const along = size <= end ? (size / end) * share : share + ((size - end) / (top - end)) * (1 - share);
    return zero + Math.sign(value) * room * along;
  };
}

/** Round levels above zero and below the end. */
export function levelsWithin(end: number, step: number): number[] {
  return Array.from({ length: Math.ceil(end / step - 1e-6) - 1 }, (_, i) => (i + 1) * step);
}

/** The values told under the bar: its ends and zero, and round ones between at the least distance that has room. */
export function labelled(
  { limit, top }: Pick<ColourScale, 'limit' | 'top'>,
  axis: (value: number) => number,
  text: (value: number) => string,
  both: boolean,
): Tick[] {
  const extent = ({ value, anchor }: Tick): readonly [number, number] => {
    const long = text(value).length * ROOM.letter;
    const left = axis(value) - { start: 0, middle: long / 2, end: long }[anchor];
    return [left - ROOM.gap / 2, left + long + ROOM.gap / 2];
  };
  const clear = (tick: Tick, others: readonly Tick[]): boolean => {
    const [left, right] = extent(tick);
    return others.map(extent).every(([l, r]) => right <= l || left >= r);
  };
  const middle = (value: number): Tick => ({ value, anchor: 'middle' });
  const zero: Tick = { value: 0, anchor: both ? 'middle' : 'start' };
  const ends: Tick[] = [
    ...(both ? [{ value: -top, anchor: 'start' } as const] : []),
    zero,
    { value: top, anchor: 'end' },
  ];
  if (both && limit !== null) return ends.concat([-limit, limit].map(middle).filter((tick) => clear(tick, ends)));
  const end = limit ?? top;
  const rows = EVERY.map((k) => levelsWithin(end * (1 + 1e-4), k * isoStep(end)).map(middle));
  const inner = rows.find((row) => row.every((tick, i) => clear(tick, [...row.slice(0, i), zero]))) ?? [];
  const shown = ends.concat(inner.filter((tick) => clear(tick, ends)));
  const beyond = EVERY.map((k) => k * isoStep(end))
    .map((step) =>
      levelsWithin(top, step)
        .filter((value) => value > end * (1 + 1e-4))
        .map(middle),
    )
    .find((row) => row.every((tick, i) => clear(tick, row.slice(0, i))));
  return shown.concat((limit === null ? [] : (beyond ?? [])).filter((tick) => clear(tick, shown)));
}

/** Steps between iso-lines from one number to the next. */
const EVERY = [1, 2, 5, 10, 20, 50, 100];
