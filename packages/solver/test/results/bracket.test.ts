import { describe, expect, it } from 'vitest';
import { bracketed } from '../../src/results/bracket.ts';
import type { CriterionVerdict, HeadResult } from '../../src/results/head-result.ts';
import { judgementOf } from './criteria/case-of.ts';

const mesh = {
  ...{ x: new Float64Array(0), y: new Float64Array(0), triangles: new Uint32Array(0), region: new Uint32Array(0) },
  ...{ boundary: new Uint32Array(0), minAngle: 0 },
};
const headOf = (name: string, criteria: CriterionVerdict[], timings: Record<string, number> = {}): HeadResult => ({
  ...{ name, mesh, sites: [], cases: [], dofs: 0, timings },
  verdict: { outcome: 'pass', criteria, sentence: `of ${name}`, remarks: [`from ${name}`] },
});
const bow = (value: number, rest: Partial<CriterionVerdict> = {}) => judgementOf({ value, limit: 0.03, ...rest });
const strength = (value: number, rest: Partial<CriterionVerdict> = {}) =>
  judgementOf({ criterion: 'strength', bound: 'least', unit: '1', value, limit: 3, ...rest });

describe('a joint between sliding and bonded', () => {
  it('is judged by the worse end of each criterion, and tells both', () => {
    const { verdict } = bracketed(
      headOf('sliding', [bow(0.02, { site: 'A1' }), strength(5)]),
      headOf('bonded', [bow(0.01, { site: 'B2' }), strength(4, { outcome: 'marginal' })]),
    );
    expect(verdict.criteria).toMatchObject([
      { criterion: 'bow', value: 0.02, site: 'A1', bracket: { sliding: 0.02, bonded: 0.01 } },
      { criterion: 'strength', value: 4, bracket: { sliding: 5, bonded: 4 } },
    ]);
    expect(verdict.outcome).toBe('marginal');
  });

  it('shows the end whose worst criterion uses more of its limit, and says which', () => {
    const [low, high] = [[bow(0.01)], [bow(0.02)]];
    const words =
      /between sliding on the body, where the bow is (.*) um, and bonded to it, (.*) um; .* show the (.*) end/;
    const shown = (sliding: CriterionVerdict[], bonded: CriterionVerdict[]) => {
      const { name, verdict } = bracketed(headOf('sliding', sliding), headOf('bonded', bonded));
      expect(verdict.sentence).toBe(`of ${name}`);
      expect(verdict.remarks[0]).toBe(`from ${name}`);
      return [name, ...words.exec(verdict.remarks[1])!.slice(1)];
    };
    expect(shown(low, high)).toEqual(['bonded', '10.0', '20.0', 'bonded']);
    expect(shown(high, low)).toEqual(['sliding', '20.0', '10.0', 'sliding']);
    expect(shown(low, low)[0]).toBe('sliding');
    // 3/2 of a strength uses more than 2/3 of a bow.
    expect(shown([bow(0.02), strength(9)], [bow(0.01), strength(2)])[0]).toBe('bonded');
  });

  it('leaves out what one end does not tell, and the words without a bow', () => {
    const { verdict } = bracketed(headOf('a', [strength(5), bow(0.01)]), headOf('b', [strength(4)]));
    expect(verdict.criteria.map(({ criterion }) => criterion)).toEqual(['strength']);
    expect(verdict.remarks).toEqual(['from b']);
  });

  it('took the time of both', () => {
    const { timings } = bracketed(
      headOf('a', [bow(0.02)], { mesh: 2, factor: 3 }),
      headOf('b', [bow(0.01)], { factor: 4, cases: 1 }),
    );
    expect(timings).toEqual({ mesh: 2, factor: 7, cases: 1 });
  });
});
