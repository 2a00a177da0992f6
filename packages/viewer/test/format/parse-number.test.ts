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
    ['1 234,5', 1234.5],
    ['1\u202f234.5 mm', 1234.5],
    ["12'500", 12500],
    // Inch: 25.4 mm exactly (1959); a mil is a thousandth of it.
    ['0.3 in', 7.62],
    ['0,3in', 7.62],
    ['2"', 50.8],
    ['5 mil', 0.127],
    ['250 um', 0.25],
    ['250 \u00b5m', 0.25],
    ['1.2 cm', 12],
  ])('reads %s', (text, value) => {
    expect(parseNumber(text, 'mm')).toBe(value);
  });

  it('reads the unit however the micro sign was typed', () => {
    expect(parseNumber('35 \u00b5m', '\u00b5m')).toBe(35);
    expect(parseNumber('35 \u03bcm', '\u00b5m')).toBe(35);
  });

  it.each([
    ['9 gf', 'N', 0.08825985],
    ['20 mN', 'N', 0.02],
    ['2 kN', 'N', 2000],
    // 1 lbf = 0.45359237 kg x 9.80665 m/s2.
    ['10 lbf', 'N', 44.482216152605],
    ['1 N m', 'N mm', 1000],
    ['320 GPa', 'MPa', 320000],
    // 1 ksi = 6.894757 MPa.
    ['1 ksi', 'MPa', 6.894757293168],
    ['1 in', '\u00b5m', 25400],
    ['0.1 N/\u00b5m', 'N/mm', 100],
  ])('converts %s into %s', (text, unit, value) => {
    expect(parseNumber(text, unit)).toBeCloseTo(value, 9);
  });

  it('does not take one unit for another', () => {
    expect(parseNumber('3 MN', 'N')).toBeNull();
    expect(parseNumber('3 N', 'mm')).toBeNull();
    expect(parseNumber('3 mm', '')).toBeNull();
  });

  it.each([
    '',
    ' ',
    '-',
    'mm',
    '7,5,3',
    '1.234,5',
    '1,234.5',
    '1 00',
    '1 2345',
    '1 000 00',
    'NaN',
    'Infinity',
    '0x10',
    '--3',
  ])('refuses to guess at "%s"', (text) => {
    expect(parseNumber(text, 'mm')).toBeNull();
  });
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
    expect(typeset('bows 47.3 um, 12 um over; maximum')).toBe('bows 47.3\u00a0\u00b5m, 12\u00a0\u00b5m over; maximum');
  });

  it('never parts a number from its unit, and ties nothing else', () => {
    expect(typeset('by 1.5 mm at 20 N, 3 N/mm and 40 degC')).toBe(
      'by 1.5\u00a0mm at 20\u00a0N, 3\u00a0N/mm and 40\u00a0degC',
    );
    const untied = ['2 Nuts', 'site B2 mmx', 'case 3 of 4', 'in mm or N'];
    expect(untied.map(typeset)).toEqual(untied);
  });
});
