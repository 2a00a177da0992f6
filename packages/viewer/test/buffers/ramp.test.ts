import { describe, expect, it } from 'vitest';
import { OVER, RAMP, rampBytes, SIGNED_RAMP } from '../../src/buffers/ramp.ts';

/** OKLab of a colour (Bjorn Ottosson 2020, "A perceptual color space for image processing"). */
function okLab(hex: string): [number, number, number] {
  const [r, g, b] = [1, 3, 5]
    .map((at) => Number.parseInt(hex.slice(at, at + 2), 16) / 255)
    .map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4));
  const l = Math.cbrt(0.4122214708 * r + 0.5363325363 * g + 0.0514459929 * b);
  const m = Math.cbrt(0.2119034982 * r + 0.6806995451 * g + 0.1073969566 * b);
  const s = Math.cbrt(0.0883024619 * r + 0.2817188376 * g + 0.6299787005 * b);
  return [
    0.2104542553 * l + 0.793617785 * m - 0.0040720468 * s,
    1.9779984951 * l - 2.428592205 * m + 0.4505937099 * s,
    0.0259040371 * l + 0.7827717662 * m - 0.808675766 * s,
  ];
}

describe('ramp', () => {
  const stops = RAMP.map(okLab);

  it('falls in lightness by equal steps, so that it reads the same without hue', () => {
    const steps = stops.slice(1).map(([l], i) => stops[i][0] - l);
    const mean = steps.reduce((sum, step) => sum + step, 0) / steps.length;
    for (const step of steps) expect(Math.abs(step / mean - 1)).toBeLessThan(0.06);
  });

  it('is perceptually even: each step as far from the last as the others, within a third', () => {
    const steps = stops.slice(1).map((stop, i) => Math.hypot(...stop.map((value, k) => value - stops[i][k])));
    const mean = steps.reduce((sum, step) => sum + step, 0) / steps.length;
    for (const step of steps) expect(Math.abs(step / mean - 1)).toBeLessThan(0.34);
  });

  it('has no stop near the colour of what is over the limit', () => {
    const over = okLab(OVER);
    for (const stop of stops) expect(Math.hypot(...stop.map((value, k) => value - over[k]))).toBeGreaterThan(0.2);
    expect(Math.abs(over[0] - stops[stops.length - 1][0])).toBeGreaterThan(0.25);
  });

  it('is as light at a difference as at its opposite, so that neither sign looks larger', () => {
    const signed = SIGNED_RAMP.map(okLab);
    signed.forEach(([l], i) => {
      expect(Math.abs(l - signed[signed.length - 1 - i][0])).toBeLessThan(0.02);
    });
  });

  it('fills a texture from the first stop to the last', () => {
    const bytes = rampBytes(256);
    const hex = (at: number): string =>
      `#${[...bytes.slice(4 * at, 4 * at + 3)].map((v) => v.toString(16).padStart(2, '0')).join('')}`;
    expect(hex(0)).toBe(RAMP[0]);
    expect(hex(255)).toBe(RAMP.at(-1));
  });
});
