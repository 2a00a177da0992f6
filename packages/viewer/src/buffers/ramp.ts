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

/** Beyond the limit: this, hatched with {@link OVER_DARK}. */
export const OVER = '#f0592a';
export const OVER_DARK = '#7d1d08';

/** The same steps of lightness from bare ceramic through ochre to umber. */
const MORE = [
  '#f4f0e3',
  '#e6dbbd',
  '#dac599',
  '#cfaf76',
  '#c39855',
  '#b78236',
  '#a96b16',
  '#995600',
  '#834500',
  '#6c3709',
  '#562808',
] as const;

/** Colours of a difference: less (towards the board) in ink, none bare, more in umber. */
export const SIGNED_RAMP: readonly string[] = [...RAMP.toReversed(), ...MORE.slice(1)];

/** `[4 * n]` bytes r, g, b, a of a ramp of equal steps, for a texture. */
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
