import { expect, it } from 'vitest';
import { shortMicrometres } from '../../src/format/number.ts';

it('never rounds a deflection across its limit, and keeps a digit of a small one', () => {
  const short = (um: number) => shortMicrometres(um / 1000, 0.035);
  expect(['34.6', '35.4', '36.6'].map((text) => short(Number(text)))).toEqual(['34.6', '35.4', '36.6']);
  expect([short(80.1), short(-78.3), short(20.4)]).toEqual(['80', '\u221278', '20']);
  expect([short(2.53), short(0), short(-0.04)]).toEqual(['2.5', '0.0', '0.0']);
});
