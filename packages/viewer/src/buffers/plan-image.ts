import type { Site } from '@flathead/solver';
import type { ColourScale } from './colour-scale.ts';
import type { PlanRaster, PlanWindow } from './plan-raster.ts';
import { BEYOND, HATCH, rampBytes, SIGNED_RAMP, TO_LIMIT } from './ramp.ts';

/** How a field becomes colour. */
export interface PlanColours extends Pick<ColourScale, 'limit' | 'top'> {
  /** `magnitude` as on the stage: from zero to the limit, hatched beyond to the top; `signed` from -top to top. */
  readonly kind: 'magnitude' | 'signed';
  /** Distance of iso-lines, as the field. */
  readonly isoStep: number;
  /** What the field is laid on where it counts less, beside the sites. */
  readonly base: string;
  /** Whether the colours mean as much beside the sites as in them. */
  readonly everywhere: boolean;
  /** Pixels of the picture for one of the page: widths of lines and hatch. */
  readonly pixelRatio: number;
}

const STEPS = 512;
const RAMPS = {
  within: rampBytes(STEPS, TO_LIMIT),
  beyond: rampBytes(STEPS, BEYOND),
  plain: rampBytes(STEPS),
  signed: rampBytes(STEPS, SIGNED_RAMP),
};
/** Share of the colour beside the sites: as much as on the stage. */
const BESIDE = 0.45;
/** A field that changes by less than this share of a step in a pixel is level: it has no line. */
const LEVEL = 1e-5;
/** Steps in a pixel of the page from which iso-lines fade, and at which they are gone: they would run together. */
const CROWDED = { all: 0.1, none: 0.25 };
/** Share of an iso-line's ink, in the sites and beside. */
const LINE = { site: 0.5, beside: 0.22 };
/** Share of a ramp to its dark end from which lines are light. */
const LIGHT_FROM = 0.55;
const LINE_DARK = [18, 33, 38];
const LINE_LIGHT = [255, 255, 255];
/** From stroke to stroke of the hatch, along x, and the share of the strokes; pixels of the page. */
const STROKES = { period: 8, share: 0.3 };

/**
 * A field seen from above as the stage colours it: ramp, iso-lines at round steps, hatch beyond the limit within the
 * sites.
 *
 * @returns `[4 * columns * rows]` r, g, b, a; clear off the plate
 */
export function planImage(
  { columns, rows, values }: PlanRaster,
  window: PlanWindow,
  sites: readonly Site[],
  { kind, limit, top, isoStep, base, everywhere, pixelRatio }: PlanColours,
): Uint8ClampedArray<ArrayBuffer> {
  const out = new Uint8ClampedArray(4 * columns * rows);
  const [ground, stroke] = [rgbOf(base), rgbOf(HATCH)];
  const inSite = siteMask(columns, rows, window, sites);
  const signed = kind === 'signed';
  const end = limit ?? top;
  const inner = RAMPS[signed ? 'signed' : limit === null ? 'plain' : 'within'];
  const perStep = 1 / isoStep;
  const period = STROKES.period * pixelRatio;
  for (let j = 0; j < rows; j++)
    for (let i = 0; i < columns; i++) {
      const at = j * columns + i;
      const value = values[at];
      if (Number.isNaN(value)) continue;
      const size = Math.abs(value);
      const beyond = !signed && limit !== null && size > limit;
      const full = everywhere || inSite[at] === 1;
      const along = signed ? (value / top + 1) / 2 : beyond ? (size - end) / (top - end) : size / end;
      const ramp = beyond ? RAMPS.beyond : inner;
      const stop = 4 * Math.round(Math.min(1, Math.max(0, along)) * (STEPS - 1));
      const hatched = beyond && full && ((i + j) % period) / period < STROKES.share;
      const part = full ? 1 : BESIDE;
      // Distance to the next iso-line over what one pixel changes, as a shader has it.
      const level = value * perStep;
      const slope = change(values, at, i > 0, i < columns - 1, 1) + change(values, at, j > 0, j < rows - 1, columns);
      const steps = slope * perStep;
      const away = steps < LEVEL ? Infinity : Math.abs(level - Math.round(level)) / steps / pixelRatio;
      const apart = Math.min(1, Math.max(0, (CROWDED.none - steps * pixelRatio) / (CROWDED.none - CROWDED.all)));
      const strength = apart * (full ? LINE.site : LINE.beside);
      const ink = beyond && full ? 0 : Math.min(1, Math.max(0, (1.15 - away) / 0.8)) * strength;
      const light = !signed && limit === null && size > LIGHT_FROM * top;
      const line = light ? LINE_LIGHT : LINE_DARK;
      for (let k = 0; k < 3; k++) {
        const pure = hatched ? stroke[k] : ramp[stop + k];
        const paint = ground[k] + (pure - ground[k]) * part;
        out[4 * at + k] = paint + (line[k] - paint) * ink;
      }
      out[4 * at + 3] = 255;
    }
  return out;
}

/** What the field changes by from a pixel to its neighbour before or, at a rim, after it; nothing where it has none. */
function change(values: Float32Array, at: number, before: boolean, after: boolean, step: number): number {
  const back = before ? Math.abs(values[at] - values[at - step]) : Number.NaN;
  if (!Number.isNaN(back)) return back;
  const ahead = after ? Math.abs(values[at] - values[at + step]) : Number.NaN;
  return Number.isNaN(ahead) ? 0 : ahead;
}

/** `[columns * rows]` 1 where the middle of a pixel lies in a probe field. */
function siteMask(columns: number, rows: number, window: PlanWindow, sites: readonly Site[]): Uint8Array {
  const mask = new Uint8Array(columns * rows);
  const [perX, perY] = [columns / window.width, rows / window.height];
  for (const {
    centre: [cx, cy],
    field: [width, height],
  } of sites) {
    const first = (edge: number, most: number): number => Math.min(most, Math.max(0, Math.ceil(edge - 0.5)));
    const [left, right] = [-1, 1].map((s) => first((cx + (s * width) / 2 - window.left) * perX, columns));
    const [top, bottom] = [1, -1].map((s) => first((window.top - cy - (s * height) / 2) * perY, rows));
    for (let j = top; j < bottom; j++) mask.fill(1, j * columns + left, j * columns + right);
  }
  return mask;
}

function rgbOf(hex: string): readonly number[] {
  return [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16));
}
