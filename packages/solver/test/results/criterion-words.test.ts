import { describe, expect, it } from 'vitest';
import { micrometreLimit, micrometreMargin, micrometres } from '../../src/results/criteria/criterion.ts';

/** What is shown, in um. */
const shown = (text: string) => Number(text.replace(' um', ''));

describe('a deflection, its limit and what is left', () => {
  it.each([
    [0.03955, 0.035, '4.6 um'],
    [0.032739, 0.035, '2.3 um'],
    [0.0801, 0.035, '45.1 um'],
    [0.00997, 0.01, '0.03 um'],
    [0.1046, 0.1, '5 um'],
    [0.00253, 0.035, '32.5 um'],
  ])('add up as they are shown: %f of %f', (value, limit, margin) => {
    expect(micrometreMargin(value, limit)).toBe(margin);
    const sum = Math.abs(shown(micrometres(value)) - shown(micrometreLimit(limit)));
    // To half of the last digit of the margin.
    const digit = 10 ** -(margin.split(' ')[0].split('.')[1]?.length ?? 0);
    expect(Math.abs(shown(margin) - sum)).toBeLessThanOrEqual(digit / 2 + 1e-9);
  });

  it('is not none where a value rounds to its limit', () => {
    expect(micrometreMargin(0.03502, 0.035)).toBe('0.02 um');
  });

  it('keeps the digits of a limit that was given to more than are shown', () => {
    expect([0.035, 0.01225, 0.0005, 0.15].map(micrometreLimit)).toEqual(['35.0 um', '12.25 um', '0.50 um', '150 um']);
  });
});
