import { describe, expect, it } from 'vitest';
import {
  BEYOND,
  HATCH,
  RAMP,
  RAMP_BELOW,
  rampBytes,
  SIGNED_RAMP,
  TO_LIMIT,
  TO_LIMIT_BELOW,
} from '../../src/buffers/ramp.ts';

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

describe.each([
  ['away from the board', RAMP],
  ['towards the board', RAMP_BELOW],
  ['beyond the limit', BEYOND],
] as const)('ramp %s', (_, ramp) => {
  const stops = ramp.map(okLab);

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

  it('fills a texture from the first stop to the last', () => {
    const bytes = rampBytes(256, ramp);
    const hex = (at: number): string =>
      `#${[...bytes.slice(4 * at, 4 * at + 3)].map((v) => v.toString(16).padStart(2, '0')).join('')}`;
    expect(hex(0)).toBe(ramp[0]);
    expect(hex(255)).toBe(ramp.at(-1));
  });
});

describe('ramp of a difference', () => {
  const stops = SIGNED_RAMP.map(okLab);
  const middle = (stops.length - 1) / 2;
  const far = (a: readonly number[], b: readonly number[]): number => Math.hypot(...a.map((v, k) => v - b[k]));

  it('is as light at a difference as at its opposite, so that neither sign looks larger', () => {
    stops.forEach(([l], i) => {
      expect(Math.abs(l - stops[stops.length - 1 - i][0])).toBeLessThan(0.01);
    });
  });

  it('is light and without hue where there is none, and goes evenly to ends that are far from black', () => {
    const [light, a, b] = stops[middle];
    expect(light).toBeGreaterThan(0.94);
    expect(Math.hypot(a, b)).toBeLessThan(0.01);
    const steps = stops.slice(1).map((stop, i) => far(stop, stops[i]));
    const mean = steps.reduce((sum, step) => sum + step, 0) / steps.length;
    for (const step of steps) expect(Math.abs(step / mean - 1)).toBeLessThan(0.1);
    for (const end of [stops[0], stops[stops.length - 1]]) expect(end[0]).toBeGreaterThan(0.5);
  });

  it('tells lower from higher by blue against yellow, also without red and green', () => {
    for (let k = 1; k <= middle; k++) {
      const [lower, higher] = [stops[middle - k], stops[middle + k]];
      expect(higher[2] - lower[2]).toBeGreaterThan(0.019 * k);
    }
  });
});

it('tells the two senses apart by blue against yellow, the more the nearer to the limit', () => {
  const apart = TO_LIMIT.map((colour, i) => okLab(TO_LIMIT_BELOW[i])[2] - okLab(colour)[2]);
  expect(apart[3]).toBeGreaterThan(0.06);
  expect(apart[6]).toBeGreaterThan(0.15);
  for (let i = 1; i < apart.length; i++) expect(apart[i]).toBeGreaterThan(apart[i - 1]);
});

describe.each([
  ['away from the board', TO_LIMIT],
  ['towards the board', TO_LIMIT_BELOW],
] as const)('scale of a limit, %s', (_, within) => {
  const [inner, outer] = [within, BEYOND].map((ramp) => ramp.map(okLab));

  it('falls in lightness from none over the limit to its end', () => {
    const lightness = [...inner, ...outer.slice(1)].map(([l]) => l);
    for (let i = 1; i < lightness.length; i++) expect(lightness[i]).toBeLessThan(lightness[i - 1] - 0.03);
    // At the limit itself the two parts are as light.
    expect(Math.abs(inner[6][0] - outer[0][0])).toBeLessThan(0.005);
  });

  it('changes hue at the limit by far more than a step, also without red and green', () => {
    // What is left of a colour to eyes that tell no red from green is its lightness and its blue or yellow.
    const across = Math.abs(inner[6][2] - outer[0][2]);
    const step = 0.044;
    expect(Math.hypot(...inner[6].map((value, k) => value - outer[0][k]))).toBeGreaterThan(3.5 * step);
    if (within === TO_LIMIT) expect(across).toBeGreaterThan(3 * step);
  });
});

it('has strokes that are seen on all colours beyond the limit', () => {
  for (const colour of BEYOND) expect(okLab(HATCH)[0] - okLab(colour)[0]).toBeGreaterThan(0.3);
});
