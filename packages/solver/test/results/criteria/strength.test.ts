import { describe, expect, it } from 'vitest';
import { strength } from '../../../src/results/criteria/strength.ts';
import { caseOf, judgementOf, strengthOf } from './case-of.ts';

describe('strength as a criterion', () => {
  it('is the least factor of the parts, whichever comes first', () => {
    const [weak, strong] = [
      { factor: 2, near: 'A1' },
      { factor: 5, near: 'F2' },
    ];
    for (const parts of [
      [weak, strong],
      [strong, weak],
    ])
      expect(strength.read(strengthOf(...parts))).toEqual({ value: 2, site: 'A1' });
    expect(strength.read(strengthOf(weak, { factor: 2, near: 'F2' }))!.site).toBe('A1');
    expect(strength.limit({ bow: 0.03, strengthFactor: 3 })).toBe(3);
  });

  it('is that of the parts whose strength is known, and not judged without any', () => {
    expect(strength.read(strengthOf({ factor: null }, { factor: 4, near: 'F1' }))).toEqual({ value: 4, site: 'F1' });
    expect(strength.read(strengthOf({ factor: null }))).toBeNull();
    expect(strength.read(caseOf({ strength: null }))).toBeNull();
  });

  it('says how many times the stress, where, and how many are asked for', () => {
    expect(strength.sentence(judgementOf({ value: 2.345, limit: 3 }))).toBe(
      'The strength is 2.35 times the largest stress in case "mounted", near B3; at least 3 times is asked for.',
    );
  });
});
