import { scaleLinear } from 'd3-scale';
import { fieldText } from '../format/number.ts';
import type { ChartField } from './chart-field.ts';

/** A box of text within a picture: centre and size, px. */
export interface TextBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

interface LaidPoint {
  readonly x: number;
  readonly y: number;
  readonly label?: string;
}

export interface PointLayout extends ChartField {
  readonly ticks: readonly number[];
  /** Whether the limit lies within the field; points far below it are shown at their own scale. */
  readonly limitShown: boolean;
  readonly limit: { readonly text: string; readonly place: TextBox };
  /** Of the label of each point; `null` for none and where there is no room. */
  readonly labels: readonly (TextBox | null)[];
}

const MARGIN = { left: 50, right: 22, top: 22, bottom: 38 };
/** px: width of a letter, height of a line, and room that a point takes. */
const LETTER = 6.4;
const LINE = 14;
const DOT = 13;
/** From the centre of a point to that of its label, up or down. */
const RISE = 15;
/** Along a curve, px from one place that is kept free to the next. */
const STEP = 8;

/**
 * Where everything in a chart of points stands: text covers neither a point nor the curve, no other text, and stays within
 * the field.
 *
 * @param limit most that y may be
 * @param wanted ticks of x, each shown where they have room; round numbers if left out
 * @param others values of x that are shown as well
 */
export function pointLayout(
  points: readonly LaidPoint[],
  limit: number,
  {
    width,
    height,
    joined,
    wanted,
    others = [],
  }: {
    readonly width: number;
    readonly height: number;
    /** Whether the points are of one curve. */
    readonly joined: boolean;
    readonly wanted?: readonly number[] | undefined;
    readonly others?: readonly number[];
  },
): PointLayout {
  const [left, right, top, floor] = [MARGIN.left, width - MARGIN.right, MARGIN.top, height - MARGIN.bottom];
  const xs = [...points.map((point) => point.x), ...others];
  const [least, most] = [Math.min(...xs), Math.max(...xs)];
  const pad = most > least ? 0.03 * (most - least) : Math.abs(least) || 1;
  const x = scaleLinear()
    .domain([least - pad, most + pad])
    .range([left, right]);
  const highest = Math.max(...points.map((point) => point.y));
  const limitShown = highest > limit / 4;
  const y = scaleLinear()
    .domain([0, limitShown ? 1.08 * Math.max(limit, highest) : 1.3 * highest])
    .nice(5)
    .range([floor, top]);
  const taken: TextBox[] = points.map((point) => ({ x: x(point.x), y: y(point.y), width: DOT, height: DOT }));
  if (joined) taken.push(...alongCurve(taken.toSorted((a, b) => a.x - b.x)));
  const free = (box: TextBox): boolean =>
    box.x - box.width / 2 >= left &&
    box.x + box.width / 2 <= width - 2 &&
    box.y + box.height / 2 <= floor &&
    taken.every((other) => !overlap(box, other));

  const text = `limit ${fieldText(limit)}${limitShown ? '' : ', far above'}`;
  const at = limitShown ? y(limit) : top;
  const size = { width: text.length * LETTER, height: LINE };
  const ends = [right - size.width / 2, left + 4 + size.width / 2, (left + right) / 2];
  const choices = [at - 9, at + 9].flatMap((middle) => ends.map((end) => ({ ...size, x: end, y: middle })));
  const place = choices.find(free) ?? choices[0];
  taken.push(place);

  const labels = points.map((point): TextBox | null => {
    if (point.label === undefined) return null;
    const box = { width: point.label.length * LETTER, height: LINE };
    const middle = Math.min(Math.max(x(point.x), left + box.width / 2), width - 2 - box.width / 2);
    const beside = DOT / 2 + 3 + box.width / 2;
    const found = [
      [middle, y(point.y) - RISE],
      [middle, y(point.y) + RISE],
      [x(point.x) + beside, y(point.y)],
      [x(point.x) - beside, y(point.y)],
    ]
      .map(([cx, cy]) => ({ ...box, x: cx, y: cy }))
      .find(free);
    if (found !== undefined) taken.push(found);
    return found ?? null;
  });
  const ticks = withRoom(wanted ?? x.ticks(Math.max(2, Math.min(12, width / 80))), x);
  return { width, height, left, right, top, floor, x, y, ticks, limitShown, limit: { text, place }, labels };
}

/** Places along the lines from point to point. */
function alongCurve(points: readonly TextBox[]): TextBox[] {
  return points.slice(1).flatMap((to, i) => {
    const from = points[i];
    const count = Math.floor(Math.hypot(to.x - from.x, to.y - from.y) / STEP);
    return Array.from({ length: count }, (_, k) => {
      const t = (k + 0.5) / count;
      return { x: from.x + t * (to.x - from.x), y: from.y + t * (to.y - from.y), width: 4, height: 4 };
    });
  });
}

/** The ticks, or every second, third and so on of them, so that their numbers stand apart. */
function withRoom(ticks: readonly number[], x: (value: number) => number): number[] {
  const sorted = [...new Set(ticks)].sort((a, b) => a - b);
  const wide = (tick: number): number => (fieldText(tick).length + 2) * LETTER;
  const apart = (every: readonly number[]): boolean =>
    every.every((tick, i) => i === 0 || x(tick) - x(every[i - 1]) >= (wide(tick) + wide(every[i - 1])) / 2);
  for (let by = 1; by < sorted.length; by++) {
    const kept = sorted.filter((_, i) => i % by === 0);
    if (apart(kept)) return kept;
  }
  return sorted.slice(0, 1);
}

function overlap(a: TextBox, b: TextBox): boolean {
  return Math.abs(a.x - b.x) < (a.width + b.width) / 2 && Math.abs(a.y - b.y) < (a.height + b.height) / 2;
}
