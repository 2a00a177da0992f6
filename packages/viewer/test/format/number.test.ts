import { describe, expect, it } from 'vitest';
import { fastenerForce, shortMicrometres } from '../../src/format/number.ts';

describe('the force of a fastener', () => {
  it('is told by a word for its sense: a support pulls the head to the board where its reaction is negative', () => {
    const force = (reaction: number, holds = true) => fastenerForce({ reaction, holds });
    expect(force(-35.31)).toBe('holds 35.3');
    expect(force(31.42)).toBe('pushes 31.4');
    expect(force(-1e-9)).toBe('0');
    expect(force(0, false)).toBe('let go');
  });
});

describe('a deflection where there is little room', () => {
  it('is never rounded across its limit, and keeps a digit where it is small', () => {
    const short = (um: number) => shortMicrometres(um / 1000, 0.035);
    expect(['34.6', '35.4', '36.6'].map((text) => short(Number(text)))).toEqual(['34.6', '35.4', '36.6']);
    expect([short(80.1), short(-78.3), short(20.4)]).toEqual(['80', '\u221278', '20']);
    expect([short(2.53), short(0), short(-0.04)]).toEqual(['2.5', '0.0', '0.0']);
  });
});
