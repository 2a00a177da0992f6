import { studyOf } from '@flathead/solver';
import { describe, expect, it } from 'vitest';
import { aboutTime, onceSolved, outlookOf, timeLeft } from '../../src/studies/outlook.ts';
import { defaultSetup, planOf } from '../../src/studies/plans.ts';
import { sampleHead } from '../state/sample-head.ts';

describe('the outlook of a study', () => {
  it.each([
    ['sweep', {}],
    ['sweep', { second: 'sites.probes.preload', from2: '0.05', to2: '0.1' }],
    ['tolerance', {}],
    ['tolerance', { indices: 'no', young: '' }],
    ['sites', {}],
  ] as const)('counts the heads of %s as the study does, %o', (study, typed) => {
    const built = planOf(study, { ...defaultSetup(study, sampleHead), ...typed }, sampleHead);
    if (!built.ok) throw new Error(JSON.stringify(built.trouble));
    expect(outlookOf(study, built.plan).heads).toBe(studyOf(study, sampleHead, built.plan).total);
  });

  it('counts the stages of one mesh, not the second one that the error takes', () => {
    expect(onceSolved({ mesh: 30, factor: 70, total: 450 })).toBeCloseTo(0.1);
  });

  it('tells time no finer than it is known, and none at the very beginning', () => {
    expect([0.2, 4.4, 23, 61, 200].map(aboutTime)).toEqual(
      ['about a second', 'about 4 s', 'about 25 s', 'about 60 s', 'about 3 min'].map((text) =>
        text.replace(/(?<=\d) /, '\u00a0'),
      ),
    );
    expect(timeLeft(2, 100, 5)).toBeNull();
    expect(timeLeft(20, 100, 5)).toBe(20);
  });
});
