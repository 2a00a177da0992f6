import { describe, expect, it } from 'vitest';
import { failureProbability as criterion } from '../../../src/results/criteria/failure-probability.ts';
import { caseOf, judgementOf, strengthOf } from './case-of.ts';

describe('failure probability as a criterion', () => {
  it('is the largest of the parts, whichever comes first', () => {
    const [safe, risky] = [
      { failureProbability: 1e-9, near: 'A1' },
      { failureProbability: 1e-4, near: 'F2' },
    ];
    for (const parts of [
      [safe, risky],
      [risky, safe],
    ])
      expect(criterion.read(strengthOf(...parts))).toEqual({ value: 1e-4, site: 'F2' });
    expect(criterion.read(strengthOf(risky, { ...risky, near: 'A1' }))!.site).toBe('F2');
    expect(criterion.limit({ bow: 0.03, failureProbability: 1e-6 })).toBe(1e-6);
  });

  it('is that of the ceramic parts, and not judged without any', () => {
    const metal = { failureProbability: null, near: 'F1' };
    expect(criterion.read(strengthOf(metal, { failureProbability: 0, near: 'A1' }))).toEqual({ value: 0, site: 'A1' });
    expect(criterion.read(strengthOf({ failureProbability: 1e-4, near: 'A1' }, metal))!.value).toBe(1e-4);
    expect(criterion.read(strengthOf(metal))).toBeNull();
    expect(criterion.read(caseOf({ strength: null }))).toBeNull();
  });

  it('says how probable, where, and how much is allowed', () => {
    expect(criterion.sentence(judgementOf({ value: 2.5e-4, limit: 1e-6 }))).toBe(
      'The ceramic breaks with a probability of 2.5e-4 in case "mounted", most likely near B3; at most 1.0e-6 is asked for.',
    );
  });
});
