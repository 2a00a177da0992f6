import { describe, expect, it } from 'vitest';
import { fastenerForce } from '../../src/format/number.ts';

describe('the force of a fastener', () => {
  it('is told by a word for its sense: a support pulls the head to the board where its reaction is negative', () => {
    const force = (reaction: number, holds = true) => fastenerForce({ reaction, holds });
    expect(force(-35.31)).toBe('holds 35.3');
    expect(force(31.42)).toBe('pushes 31.4');
    expect(force(-1e-9)).toBe('0');
    expect(force(0, false)).toBe('let go');
  });
});
