import { describe, expect, it } from 'vitest';
import { formatCorners, parseCorners } from '../../src/format/corners.ts';

describe('corners of a polygon', () => {
  it.each(['0 0\n10 0\n10 5,5', '0\t0\n10\t0\n10\t5,5\n', '0; 0\n10; 0\n10; 5,5', '[0, 0],\n[10, 0],\n[10, 5.5]'])(
    'reads %j',
    (text) => {
      expect(parseCorners(text)).toEqual({
        corners: [
          [0, 0],
          [10, 0],
          [10, 5.5],
        ],
        wrong: null,
      });
    },
  );

  it('says which line is wrong', () => {
    expect(parseCorners('0 0\n1\n').wrong).toMatch(/^Line 2 is "1"/);
    expect(parseCorners('0 0\n1 0').wrong).toMatch(/three or more/);
    expect(formatCorners([[1, 2.5]])).toBe('1 2.5');
  });
});
