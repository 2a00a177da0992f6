import { describe, expect, it } from 'vitest';
import { micrometreGap, micrometres, usedShare } from '../../../src/results/criteria/criterion.ts';

describe('what the criteria share', () => {
  it('uses up the limit when the value reaches it, from below or from above', () => {
    expect(usedShare({ value: 3, limit: 4, bound: 'most' })).toBe(0.75);
    expect(usedShare({ value: 5, limit: 4, bound: 'least' })).toBe(0.8);
  });

  it('tells a deflection with three digits, and none finer than 10 nm', () => {
    expect([0.1234, 0.1, 0.0999, 0.01, 0.00999, 0.00012].map(micrometres)).toEqual([
      '123 um',
      '100 um',
      '99.9 um',
      '10.0 um',
      '9.99 um',
      '0.12 um',
    ]);
    expect(micrometres(-0.0456)).toBe('-45.6 um');
    expect(micrometres(-0.123)).toBe('-123 um');
  });

  it('tells how far a deflection is from its limit, never negative', () => {
    expect(micrometreGap(0.04, 0.035)).toBe('5.0 um over');
    expect(micrometreGap(0.03, 0.035)).toBe('5.0 um inside');
  });
});
