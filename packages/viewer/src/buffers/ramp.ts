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

const colour = scaleLinear<string>()
  .domain(RAMP.map((_, i) => i / (RAMP.length - 1)))
  .range(RAMP)
  .clamp(true);

/** Colour of a share of the limit, `rgb(r, g, b)`; beyond one that of the limit. */
function rampColour(share: number): string {
  return colour(share);
}

/** `[4 * n]` bytes r, g, b, a of the ramp, for a texture. */
export function rampBytes(n: number): Uint8Array {
  const bytes = new Uint8Array(4 * n);
  for (let i = 0; i < n; i++) {
    const [r, g, b] = rampColour(i / (n - 1))
      .match(/\d+/g)!
      .map(Number);
    bytes.set([r, g, b, 255], 4 * i);
  }
  return bytes;
}
