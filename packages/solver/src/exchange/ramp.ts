/** From none to the limit: one hue, evenly darker, so that it reads without colour too; and what is beyond the limit. */
const STOPS = ['#f4f1e4', '#d3e2dc', '#a5cbcf', '#74aac2', '#4a86ae', '#2f6292', '#1d3f6b'] as const;
export const BEYOND = '#c2410c';

/** Colour of a share of the limit, sRGB from 0 to 255. */
export function rampColour(share: number): [number, number, number] {
  if (share > 1) return channels(BEYOND);
  const place = Math.max(0, share) * (STOPS.length - 1);
  const low = Math.min(STOPS.length - 2, Math.floor(place));
  const [a, b] = [channels(STOPS[low]), channels(STOPS[low + 1])];
  const mix = (k: number) => Math.round(a[k] + (place - low) * (b[k] - a[k]));
  return [mix(0), mix(1), mix(2)];
}

function channels(hex: string): [number, number, number] {
  const at = (k: number) => Number.parseInt(hex.slice(1 + 2 * k, 3 + 2 * k), 16);
  return [at(0), at(1), at(2)];
}

/** `#rrggbb` */
export function hex(colour: readonly number[]): string {
  return `#${colour.map((value) => value.toString(16).padStart(2, '0')).join('')}`;
}
