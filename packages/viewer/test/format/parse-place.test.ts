import { describe, expect, it } from 'vitest';
import { parsePlace } from '../../src/format/parse-place.ts';

describe('parsePlace', () => {
  it.each([
    ['12.5 -3', [12.5, -3]],
    ['12,5 -3,25', [12.5, -3.25]],
    ['12,5, -3,25', [12.5, -3.25]],
    ['12.5, -3.25', [12.5, -3.25]],
    ['12.5,-3.25', [12.5, -3.25]],
    ['12,5;-3', [12.5, -3]],
    ['12,5 ; −3,25 mm', [12.5, -3.25]],
    ['12,5,3,25', [12.5, 3.25]],
    ['12,3', [12, 3]],
    ['(1.5, 2)', [1.5, 2]],
    ['x 1,5 y -2', [1.5, -2]],
  ] as const)('reads %s', (text, place) => {
    expect(parsePlace(text)).toEqual(place);
  });

  it.each(['', '12', '12.5', '12,5,3', 'a b', '1 2 3', '1;2;3', '1 2;', '--1 2'])('refuses "%s"', (text) => {
    expect(parsePlace(text)).toBeNull();
  });
});
