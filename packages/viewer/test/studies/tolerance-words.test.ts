import { describe, expect, it } from 'vitest';
import { capabilityWords, failingWords, rangeOfShare, share } from '../../src/studies/tolerance-words.ts';

describe('words on the scatter of heads', () => {
  it('say how many fail, and of all no more than the interval', () => {
    const words = (count: number, value: number, low: number, high: number) =>
      failingWords({ count, value, low, high }, 64, '95').replaceAll('\u00a0', ' ');
    expect(words(64, 1, 0.944, 1)).toBe('All 64 heads break a limit; with 95 % confidence at least 94.4 % of all do.');
    expect(words(0, 0, 0, 0.056)).toBe(
      'None of 64 heads breaks a limit; with 95 % confidence at most 5.6 % of all do.',
    );
    expect(words(16, 0.25, 0.15, 0.37)).toContain(
      '16 of 64 heads break a limit, 25 %; with 95 % confidence 15 % to 37 %',
    );
  });

  it('give no capability where every head fails, and no share beyond all', () => {
    const able = { value: -10.81, low: -12.7, high: -8.92 };
    expect(capabilityWords(able, { value: 1, low: 0.9, high: 1 })).toBe('none, all fail');
    expect(capabilityWords(able, { value: 0.9, low: 0.9, high: 1 })).toContain('10.81');
    expect(rangeOfShare(0.91, 0.25)).toBe('66 to 100\u00a0%');
    expect([share(1.03), share(-0.02)]).toEqual(['100\u00a0%', '0\u00a0%']);
  });
});
