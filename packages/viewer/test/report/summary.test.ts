import type { CriterionVerdict, HeadResult } from '@flathead/solver';
import { describe, expect, it } from 'vitest';
import { stiffnessDigits } from '../../src/report/fastener-rows.ts';
import { summarySentences } from '../../src/report/summary.ts';
import { sampleHead } from '../state/sample-head.ts';

type Judged = Pick<CriterionVerdict, 'criterion' | 'outcome' | 'bound'>;
const [bow, flatness, contact]: readonly Judged[] = [
  { criterion: 'bow', outcome: 'fail', bound: 'most' },
  { criterion: 'flatness', outcome: 'fail', bound: 'most' },
  { criterion: 'contact', outcome: 'fail', bound: 'least' },
];

function firstSentence(criteria: readonly Judged[]): string {
  const outcome = criteria.some((criterion) => criterion.outcome === 'fail') ? 'fail' : 'pass';
  const full = criteria.map((criterion) => ({ value: 0.04, error: null, shearAdds: null, ...criterion }));
  const result = {
    verdict: { outcome, criteria: full, sentence: '' },
    cases: [{ name: 'mounted', load: 300 }],
    sites: [],
  };
  return summarySentences(sampleHead, result as never as HeadResult)[0];
}

describe('the first words of a report', () => {
  it('name every limit that is broken, and no other', () => {
    expect(firstSentence([bow])).toBe('This head exceeds its limit on bow.');
    expect(firstSentence([bow, { ...flatness, outcome: 'pass' }])).toBe('This head exceeds its limit on bow.');
    expect(firstSentence([bow, flatness])).toBe('This head exceeds its limits on bow and flatness.');
    // A contact force below its limit exceeds nothing.
    expect(firstSentence([bow, contact])).toBe('This head is outside its limits on bow and contact force.');
    expect(firstSentence([{ ...bow, outcome: 'pass' }])).toBe('This head stays within every limit it is judged by.');
  });
});

describe('stiffness of a fastener', () => {
  it('has three figures where it is an estimate, and its own where it was entered', () => {
    const fastener = { name: 'W', at: [0, 0] as [number, number] };
    expect(stiffnessDigits(fastener, 567396.2)).toBe('567000');
    expect(stiffnessDigits({ ...fastener, stiffness: 45678 }, 45678)).toBe('45678');
    expect(stiffnessDigits(fastener, null)).toBe('rigid');
  });
});
