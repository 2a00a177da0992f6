import { describe, expect, it } from 'vitest';
import { limitScale, plainScale } from '../../src/buffers/colour-scale.ts';
import { axisOf, labelled, levelsWithin } from '../../src/charts/legend-axis.ts';

const WIDTH = 236;
const text = (value: number): string => String(Number((value * 1000).toPrecision(3)));

describe('axis of the colours', () => {
  it('rises from zero over the limit to the top, and gives each part room', () => {
    for (const largest of [0, 0.04, 0.0801, 0.2, 5]) {
      const scale = limitScale(0.035, largest);
      const axis = axisOf(scale, WIDTH);
      expect(axis(0)).toBe(0);
      expect(axis(scale.top)).toBeCloseTo(WIDTH, 9);
      expect(axis(0.0175)).toBeCloseTo(axis(0.035) / 2, 9);
      expect(axis(0.035)).toBeGreaterThan(0.41 * WIDTH);
      expect(axis(0.035)).toBeLessThan(0.81 * WIDTH);
      const both = axisOf(scale, WIDTH, true);
      expect(both(-0.02) + both(0.02)).toBeCloseTo(WIDTH, 9);
    }
  });

  it('tells of its ends and of as many round values between as do not run together', () => {
    for (const [scale, both] of [
      [limitScale(0.035, 0.0801), false],
      [limitScale(0.035, 0.02), false],
      [limitScale(0.2, 15), false],
      [plainScale(0.0371), false],
      [limitScale(0.035, 0.0801), true],
    ] as const) {
      const axis = axisOf(scale, WIDTH, both);
      const ticks = labelled(scale, axis, text, both);
      const spans = ticks
        .map(({ value, anchor }) => {
          const long = text(value).length * 6;
          const left = axis(value) - { start: 0, middle: long / 2, end: long }[anchor];
          return [left, left + long];
        })
        .sort((a, b) => a[0] - b[0]);
      spans.slice(1).forEach(([left], i) => {
        expect(left).toBeGreaterThan(spans[i][1]);
      });
      expect(ticks.map(({ value }) => value)).toContain(scale.top);
      expect(ticks.map(({ value }) => value)).toContain(0);
      expect(ticks.length).toBeGreaterThan(2);
    }
  });

  it('has levels above zero and below the end', () => {
    expect(levelsWithin(35, 5)).toEqual([5, 10, 15, 20, 25, 30]);
    expect(levelsWithin(36, 5).at(-1)).toBe(35);
  });
});
