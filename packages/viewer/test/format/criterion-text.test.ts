import { describe, expect, it } from 'vitest';
import { criterionDigits, criterionLimit, criterionUnit } from '../../src/format/criterion-text.ts';
import { exponentText, forceDigits, probabilityDigits } from '../../src/format/number.ts';
import { parseNumber } from '../../src/format/parse-number.ts';

describe('text of a criterion', () => {
  it.each([
    ['bow', 'mm', 0.0473, '47.3', '\u00b5m'],
    ['strength', '1', 2.5342, '2.53', ''],
    ['contact', 'N', 0.04987, '0.0499', 'N'],
    ['fasteners', '1', 0.534, '53', '%'],
    ['fasteners', '1', 0.0534, '5.3', '%'],
    ['failureProbability', '1', 4.93e-7, '4.9e\u22127', ''],
  ] as const)('%s in %s', (criterion, unit, value, digits, written) => {
    expect(criterionDigits(value, { criterion, unit })).toBe(digits);
    expect(criterionUnit({ criterion, unit })).toBe(written);
  });

  it('writes limits as they were typed', () => {
    expect(criterionLimit({ criterion: 'failureProbability', unit: '1', limit: 1e-9 })).toBe('1e\u22129');
    expect(criterionLimit({ criterion: 'fasteners', unit: '1', limit: 0.8 })).toBe('80');
    expect(criterionLimit({ criterion: 'bow', unit: 'mm', limit: 0.035 })).toBe('35.0');
  });
});

describe('probabilities', () => {
  it.each([
    [0, '0'],
    [1e-15, '<1e-12'],
    [0.123, '0.12'],
  ])('%s', (value, text) => {
    expect(probabilityDigits(value)).toBe(text);
  });

  it.each([1e-9, 2.5e-7, 0.5, 0.01])('%s in a field reads back as itself', (value) => {
    expect(parseNumber(exponentText(value))).toBe(value);
  });
});

describe('forceDigits', () => {
  it.each([
    [0, '0.00'],
    [-0.00001, '0.0000'],
    [-33.42, '\u221233.4'],
    [1250.4, '1250'],
  ])('%s N', (force, text) => {
    expect(forceDigits(force)).toBe(text);
  });
});
