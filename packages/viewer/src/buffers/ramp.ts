import { scaleLinear } from 'd3-scale';

/**
 * Colours from no bow to the limit: bare ceramic that takes on ink.
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

/** Beyond the limit: this, hatched with {@link OVER_DARK}. */
export const OVER = '#f0592a';
export const OVER_DARK = '#7d1d08';

/** From the limit towards the board over none to the limit away from it; so a difference of two heads has the same senses. */
export const SIGNED_RAMP: readonly string[] = [...RAMP_BELOW.toReversed(), ...RAMP.slice(1)];

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
