import { describe, expect, it } from 'vitest';
import { bow } from '../../../src/results/criteria/bow.ts';
import { caseOf, judgementOf } from './case-of.ts';

describe('bow as a criterion', () => {
  it('is the size of the signed bow, towards the board or away', () => {
    for (const value of [-0.02, 0.02])
      expect(bow.read(caseOf({ bow: { value, at: [3, 4], site: 'B2' } }))).toEqual({ value: 0.02, site: 'B2' });
  });

  it('is judged by the limit of its name', () => {
    expect(bow.limit({ bow: 0.03, flatness: 0.04 })).toBe(0.03);
  });

  it('says on which side of the limit it is and by how much', () => {
    expect(bow.sentence(judgementOf({ value: 0.0475, limit: 0.035 }))).toBe(
      'Site B3 bows 47.5 um in case "mounted", 12.5 um over the 35.0 um limit.',
    );
    expect(bow.sentence(judgementOf({ value: 0.0325, limit: 0.035 }))).toMatch(/, 2\.5 um inside the/);
    expect(bow.sentence(judgementOf({ value: 0.035, limit: 0.035 }))).toMatch(/, 0\.00 um inside the/);
  });
});
