import { describe, expect, it } from 'vitest';
import { conclusionOf, moveWords, sentenceOf, togetherWords } from '../../src/results/advice-words.ts';
import { twoByTwo } from '../model/two-by-two.ts';
import { judgementOf } from './criteria/case-of.ts';

const told = { what: 'a body 1 mm thicker', value: 0.028, gain: 0.012, within: true };
const failing = judgementOf({ value: 0.04, limit: 0.03 });

describe('advice in words', () => {
  it('says what a change gains and what that is worth before it says what to do', () => {
    const worth = (change: object, now = failing) => sentenceOf({ ...told, ...change }, now);
    expect(worth({})).toBe('-12.0 um, within the limit: a body 1 mm thicker.');
    const short = { within: false, value: 0.035, gain: 0.005 };
    expect(worth(short)).toBe('-5.00 um of the 10.0 um needed: a body 1 mm thicker.');
    expect(worth({ ...short, value: 0.0295 })).toMatch(/, 0\.5\d* um inside the limit, marginal: /);
    expect(worth({ ...short, value: 0.03 })).toMatch(/, 0\.00 um inside the limit, marginal: /);
    expect(worth(short, judgementOf({ value: 0.03, limit: 0.03 }))).toMatch(/, not quite enough: /);
  });

  it('concludes nothing where something suffices, else that more has to change', () => {
    expect(conclusionOf([{ within: false }, { within: true }], failing, 0.02)).toBeNull();
    expect(conclusionOf([{ within: false }], failing, 0.02)).toMatch(/^This is not enough: change more/);
    expect(conclusionOf([{ within: false }, { within: false }], failing, 0.02)).toMatch(/^None of these is enough/);
    expect(conclusionOf([], failing, 0.02)).toMatch(/gains even 2 % of the limit, 0\.60 um\.$/);
  });

  it('names the fasteners that move, or all of them', () => {
    const { fasteners } = twoByTwo;
    const words = (moved: number[], along: 'x' | 'sites', of = fasteners) =>
      moveWords(
        of,
        of.map((fastener, i) => (moved.includes(i) ? { ...fastener, at: [0, 0] } : fastener)),
        { sets: [], along },
        2,
      );
    expect(words([1], 'x')).toBe('moving fastener F2 2 mm inwards along x');
    expect(words([0, 2], 'sites')).toBe('moving fasteners F1 and F3 2 mm straight towards the sites');
    expect(words([0, 1, 2], 'x')).toBe('moving fasteners F1, F2 and F3 2 mm inwards along x');
    expect(words([0, 1, 2, 3], 'x')).toBe('moving all 4 fasteners 2 mm inwards along x');
    expect(words([0, 1], 'x', fasteners.slice(0, 2))).toBe('moving fasteners F1 and F2 2 mm inwards along x');
    expect(togetherWords([{ what: 'this' }, { what: 'that' }])).toBe('this and that together');
  });
});
