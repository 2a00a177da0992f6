import { describe, expect, it } from 'vitest';
import { passingDigits } from '../../src/studies/setting-text.ts';

describe('a value that just passes', () => {
  it('is rounded to three figures on the side that passes', () => {
    expect(passingDigits(5.0881, 'above')).toBe('5.09');
    expect(passingDigits(5.0889, 'below')).toBe('5.08');
    expect(passingDigits(5.31, 'above')).toBe('5.31');
    expect(passingDigits(-41.234, 'above')).toBe('-41.2');
    expect(passingDigits(0.08123, 'below')).toBe('0.0812');
  });
});
