import { scaleLinear } from 'd3-scale';

/**
 * Colours from none on: bare ceramic that takes on ink.
 *
 * Eleven stops at equal steps of OKLab lightness from 0.955 to 0.335 along a curve from warm white through green-blue to
 * indigo: lightness alone orders them, whatever the eye does with hue.
 */
export const RAMP = [
  '#f4f0e3',
  '#dcdec7',
  '#bacfb5',
  '#8fc1aa',
  '#62b1a7',
  '#399ea4',
  '#108aa0',
  '#00739a',
  '#085c91',
  '#174586',
  '#1c2e75',
] as const;

/**
 * Towards the board, where the two senses are told apart: the same lightness steps through straw to olive and umber. Yellow against
 * blue differs for eyes that see no red or no green as well.
 */
export const RAMP_BELOW = [
  '#f4f0e3',
  '#e2ddbd',
  '#d0ca99',
  '#bdb778',
  '#a9a459',
  '#9b903a',
  '#8c7c1b',
  '#7c6800',
  '#6c5500',
  '#5a4400',
  '#463400',
] as const;

/** Stops of a ramp that lie within a limit; the rest is for fields that have none. */
const WITHIN = 7;

/** From none to the limit: the light part of {@link RAMP}. */
export const TO_LIMIT: readonly string[] = RAMP.slice(0, WITHIN);

/** The same towards the board. */
export const TO_LIMIT_BELOW: readonly string[] = RAMP_BELOW.slice(0, WITHIN);

/**
 * Beyond the limit, under a hatch of {@link HATCH}: vermilion to black cherry.
 *
 * Goes on falling in lightness where {@link TO_LIMIT} ends, from 0.584 to 0.252 by equal steps, so that darker is farther
 * from flat throughout; hue, opposite on the axis of blue and yellow, says on which side of the limit.
 */
export const BEYOND = [
  '#d34303',
  '#c23713',
  '#b02b1a',
  '#9f201d',
  '#8e141e',
  '#7d061d',
  '#6b001b',
  '#58001a',
  '#460016',
] as const;

/** Strokes of the hatch beyond the limit: light on all of {@link BEYOND}. */
export const HATCH = '#ffd9c4';

/**
 * A difference of two heads, from lower over none to higher: blue, a light grey, burnt orange.
 *
 * Straight lines in OKLab from lightness 0.955 to 0.53 on both sides, so that the ends are as far from none as each other and
 * neither is near black; they differ on the axis of blue and yellow, which eyes that see no red or no green have as well.
 */
export const SIGNED_RAMP = [
  '#246eb7',
  '#3d7bbd',
  '#5288c3',
  '#6695c9',
  '#7aa2ce',
  '#8eafd4',
  '#a2bcd9',
  '#b6c9de',
  '#cad6e3',
  '#dee3e7',
  '#f2f0ec',
  '#ece0d6',
  '#e5d0c2',
  '#ddc0ad',
  '#d6b098',
  '#cea084',
  '#c7916f',
  '#be815b',
  '#b67246',
  '#ad622e',
  '#a4520f',
] as const;

/** `[4 * n]` bytes r, g, b, a of a ramp, for a texture. */
export function rampBytes(n: number, ramp: readonly string[] = RAMP): Uint8Array {
  const colour = scaleLinear<string>()
    .domain(ramp.map((_, i) => i / (ramp.length - 1)))
    .range(ramp)
    .clamp(true);
  const bytes = new Uint8Array(4 * n);
  for (let i = 0; i < n; i++) {
    const [r, g, b] = colour(i / (n - 1))
      .match(/\d+/g)!
      .map(Number);
    bytes.set([r, g, b, 255], 4 * i);
  }
  return bytes;
}
