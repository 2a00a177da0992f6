import { describe, expect, it } from 'vitest';
import { coordinateText, fieldText, micrometreDigits, signedMicrometres, typeset } from '../../src/format/number.ts';
import { parseNumber } from '../../src/format/parse-number.ts';

describe('parseNumber', () => {
  it.each([
    ['7,5', 7.5],
    ['7.5', 7.5],
    [' 7,5 mm ', 7.5],
    ['7.5mm', 7.5],
    ['+7.5', 7.5],
    ['-0,25', -0.25],
    ['\u2212 3'.replace(' ', ''), -3],
    ['.5', 0.5],
    ['5.', 5],
    ['1e-3', 0.001],
    ['1,5e2', 150],
  ])('reads %s', (text, value) => {
    expect(parseNumber(text, 'mm')).toBe(value);
  });

  it('reads the unit however the micro sign was typed', () => {
    expect(parseNumber('35 \u00b5m', '\u00b5m')).toBe(35);
    expect(parseNumber('35 \u03bcm', '\u00b5m')).toBe(35);
  });

  it.each(['', ' ', '-', 'mm', '7,5,3', '1.234,5', '1,234.5', '1 000', '7.5 in', 'NaN', 'Infinity', '0x10', '--3'])(
    'refuses to guess at "%s"',
    (text) => {
      expect(parseNumber(text, 'mm')).toBeNull();
    },
  );
});

describe('numbers as shown', () => {
  it('shows a deflection with the digits of the command line', () => {
    expect([0.0473, 0.1284, 0.00628, -0.0473].map(micrometreDigits)).toEqual(['47.3', '128', '6.28', '47.3']);
    expect(signedMicrometres(-0.0473)).toBe('\u221247.3');
    expect(signedMicrometres(0.0473)).toBe('+47.3');
    expect(signedMicrometres(-1e-9)).toBe('0.00');
  });

  it('shows no more decimals than a value has', () => {
    expect([0.1 + 0.2, 84, 4.5, 35.00000000000001].map(fieldText)).toEqual(['0.3', '84', '4.5', '35']);
    expect([12.5, -0.25, 12].map(coordinateText)).toEqual(['12.5', '\u22120.25', '12.0']);
  });

  it('sets um as a unit, not within words', () => {
    expect(typeset('bows 47.3 um, 12 um over; maximum')).toBe('bows 47.3 \u00b5m, 12 \u00b5m over; maximum');
  });
});
