import { describe, expect, it } from 'vitest';
import { announcement } from '../../src/state/announcement.ts';
import { full, live, model } from './answers.ts';

describe('what is read out', () => {
  it('is the verdict of the full answer of the model shown, and nothing before', () => {
    const said = announcement({ solved: full, refusal: null }, model);
    expect(said).toMatch(/^(Pass|Marginal|Fail)\. /);
    const sentence = full.result.verdict.sentence.replace(/(\d) um\b/g, '$1\u00a0\u00b5m');
    expect(said).toContain(sentence);
    expect(announcement({ solved: live, refusal: null }, model)).toBeNull();
    expect(announcement({ solved: full, refusal: null }, { ...model })).toBeNull();
    const fault = { code: 'MECHANISM' as const, message: 'free', path: '', details: {} };
    expect(announcement({ solved: full, refusal: { model, fault } }, model)).toMatch(/^No answer/);
  });
});
