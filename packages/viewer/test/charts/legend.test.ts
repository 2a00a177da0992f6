import { expect, it } from 'vitest';
import { legendText } from '../../src/charts/Legend.tsx';

it('tells a loss by what it leaves, from the whole down to none', () => {
  // Of a preload of 0.09 N, 0.04 N may be lost.
  const text = (lost: number) => legendText(lost, 1, 0.09);
  expect([0, 0.04, 0.09, 0.1].map(text)).toEqual(['0.09', '0.05', '0', '0']);
  // Without a whole to take it from, the value itself: 35 um.
  expect(legendText(0.035, 1000)).toBe('35');
});
