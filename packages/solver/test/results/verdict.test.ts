import { describe, expect, it } from 'vitest';
import type { Limits } from '../../src/model/head-model.ts';
import type { CaseResult } from '../../src/results/head-result.ts';
import { type SecondOpinions, verdictOf } from '../../src/results/verdict.ts';
import { caseOf, strengthOf } from './criteria/case-of.ts';

const bowed = (value: number, name = 'mounted', site = 'A1'): CaseResult =>
  caseOf({ name, bow: { value, at: [0, 0], site } });
const none: SecondOpinions = { coarse: null, thin: null };
/** Second opinions by which the bow of every case is this much. */
const opinions = (coarse: number | null, thin: number | null): SecondOpinions => ({
  coarse: coarse === null ? null : apart(bowed(coarse), 0),
  thin: thin === null ? null : () => bowed(thin),
});
/** A coarser mesh that reads this, its field so far apart in bow and flatness, mm. */
const apart = (result: CaseResult, gap: number): SecondOpinions['coarse'] => ({
  measured: () => result,
  gap: () => ({ bow: gap, flatness: gap }),
});
const judged = (value: number, limits: Limits, second = none) => verdictOf(limits, [bowed(value)], second, []);

describe('verdict on one criterion', () => {
  it('is a failure beyond the limit, a pass within it, and marginal at it', () => {
    expect(judged(0.031, { bow: 0.03 }).outcome).toBe('fail');
    expect(judged(-0.031, { bow: 0.03 }).outcome).toBe('fail');
    expect(judged(0.029, { bow: 0.03 }).outcome).toBe('pass');
    expect(judged(0, { bow: 0.03 }).outcome).toBe('pass');
  });

  it('is marginal within the error of the limit, on either side', () => {
    // 3 |v - coarse| / (1.7^2 - 1) = 0.0016 for 0.001.
    const error = 0.003 / (1.7 ** 2 - 1);
    const outcome = (value: number) => judged(value, { bow: 0.03 }, opinions(value + 0.001, null));
    expect(outcome(0.03 + 1.01 * error).outcome).toBe('fail');
    expect(outcome(0.03 + 0.99 * error).outcome).toBe('marginal');
    expect(outcome(0.03 - 0.99 * error).outcome).toBe('marginal');
    expect(outcome(0.03 - 1.01 * error).outcome).toBe('pass');
    expect(outcome(0.02).criteria[0].error).toBeCloseTo(error, 12);
    expect(judged(0.02, { bow: 0.03 }).criteria[0].error).toBeNull();
  });

  it('is no surer than the deflection that it is read from, where two meshes agree on the value alone', () => {
    const read = (coarse: number, gap: number) =>
      judged(0.02, { bow: 0.03 }, { coarse: apart(bowed(coarse), gap), thin: null }).criteria[0].error;
    // Second order: what is 0.0005 apart at sizes 1 and 1.7 is 0.0005 / (1.7^2 - 1) off at size 1.
    expect(read(0.02, 0.0005)).toBeCloseTo(0.0005 / 1.89, 12);
    expect(read(0.0201, 0.0005)).toBeCloseTo(0.0005 / 1.89, 12);
    expect(read(0.0203, 0.0005)).toBeCloseTo(0.0009 / 1.89, 12);
  });

  it('is marginal within the margin that is kept in hand, a share of the limit', () => {
    const outcome = (value: number) => judged(value, { bow: 0.03, margin: 0.1 }).outcome;
    expect(outcome(0.0301)).toBe('fail');
    expect(outcome(0.0271)).toBe('marginal');
    expect(outcome(0.0269)).toBe('pass');
  });

  it('is turned round where the limit is the least: strength, with an error of first order', () => {
    const strong = (factor: number) =>
      caseOf({
        strength: {
          parts: [
            {
              ...{ part: 'body', material: 'any', measure: 'principal', stress: 1, gross: 1, at: [0, 0] },
              ...{ face: 'board', fastener: null, near: 'A1', strength: 1, factor, failureProbability: null },
            },
          ],
          bodyTension: new Float64Array(0),
        },
      });
    const limits: Limits = { bow: 1, strengthFactor: 3 };
    const outcome = (factor: number, coarse = factor) =>
      verdictOf(limits, [strong(5), strong(factor)], { coarse: apart(strong(coarse), 1), thin: null }, []).criteria[1];
    expect(outcome(2.7)).toMatchObject({ outcome: 'fail', value: 2.7, bound: 'least' });
    expect(outcome(3.4)).toMatchObject({ outcome: 'pass', value: 3.4 });
    // A tenth of the value at least: two meshes that agree on a peak do so by chance.
    expect(outcome(2.8)).toMatchObject({ outcome: 'marginal' });
    expect(outcome(3.3)).toMatchObject({ outcome: 'marginal' });
    expect(outcome(3.3).error).toBeCloseTo(0.33, 12);
    expect(outcome(3.1, 3.2).error).toBeCloseTo(0.3 / 0.7, 9);
    expect(outcome(3.1, 3.2).outcome).toBe('marginal');
    expect(outcome(2.9, 3).outcome).toBe('marginal');
    expect(verdictOf({ ...limits, margin: 0.1 }, [strong(3.2)], none, []).criteria[1].outcome).toBe('marginal');
  });
});

describe('errors that two meshes would understate', () => {
  it('are those of the field of each criterion', () => {
    const [bow, flat] = verdictOf(
      { bow: 0.03, flatness: 0.03 },
      [bowed(0.02)],
      { coarse: { measured: () => bowed(0.02), gap: () => ({ bow: 0.00189, flatness: 0.00378 }) }, thin: null },
      [],
    ).criteria;
    expect(bow.error).toBeCloseTo(0.001, 12);
    expect(flat.error).toBeCloseTo(0.002, 12);
  });

  it('are half of a failure probability at least, which fails at twice its limit all the same', () => {
    const outcome = (failureProbability: number) => {
      const result = strengthOf({ failureProbability });
      const limits = { bow: 1, failureProbability: 1e-6 };
      return verdictOf(limits, [result], { coarse: apart(result, 0), thin: null }, []).criteria[1].outcome;
    };
    expect([6.6e-7, 6.7e-7, 1.99e-6, 2.01e-6, 1].map(outcome)).toEqual([
      'pass',
      'marginal',
      'marginal',
      'fail',
      'fail',
    ]);
  });
});

describe('verdict over cases and criteria', () => {
  const flat = (minimumZone: number, bow: number) =>
    caseOf({
      bow: { value: bow, at: [0, 0], site: 'A1' },
      flatness: { leastSquares: { total: 0, peak: 0, valley: 0, rms: 0 }, minimumZone },
    });

  it('is that of the worst case, the first of equals, with its site and the opinions on that case', () => {
    const cases = [bowed(0.01, 'a'), bowed(-0.02, 'b', 'B2'), bowed(0.02, 'c'), bowed(0.015, 'd')];
    const asked: number[] = [];
    const thin = (index: number) => {
      asked.push(index);
      return bowed(0.012);
    };
    const [bow] = verdictOf({ bow: 0.03 }, cases, { coarse: null, thin }, []).criteria;
    expect(bow).toMatchObject({ criterion: 'bow', value: 0.02, limit: 0.03, case: 'b', site: 'B2', unit: 'mm' });
    expect(bow.shearAdds).toBeCloseTo(0.008, 12);
    expect(asked).toEqual([1]);
    expect('mode' in bow).toBe(false);
  });

  it('is no better than the worst criterion, and its sentence is of the one that uses most of its limit', () => {
    const both = verdictOf({ bow: 0.03, flatness: 0.02 }, [flat(0.021, 0.01)], none, []);
    expect(both.criteria.map(({ outcome }) => outcome)).toEqual(['pass', 'fail']);
    expect(both.outcome).toBe('fail');
    expect(both.sentence).toMatch(/^The site area is flat within 21\.0 um .* over/);
    const other = verdictOf({ bow: 0.03, flatness: 0.02, margin: 0.1 }, [flat(0.01, 0.029)], none, []);
    expect(other.outcome).toBe('marginal');
    expect(other.sentence).toMatch(/^Site A1 bows 29\.0 um/);
    expect(verdictOf({ bow: 0.03, flatness: 0.02 }, [flat(0.01, 0.01)], none, []).outcome).toBe('pass');
  });

  it('leaves out what has no limit, and what no case tells', () => {
    const names = (limits: Limits) => verdictOf(limits, [flat(0.01, 0.01)], none, []).criteria.map((c) => c.criterion);
    expect(names({ bow: 0.03 })).toEqual(['bow']);
    expect(names({ bow: 0.03, flatness: 0.02 })).toEqual(['bow', 'flatness']);
    expect(names({ bow: 0.03, strengthFactor: 3, fastener: 0.9, contactForce: 0.02 })).toEqual(['bow']);
  });
});

describe('remarks of a verdict', () => {
  const remarks = (value: number, thin: number) =>
    verdictOf({ bow: 0.03 }, [bowed(value)], opinions(null, thin), ['first']).remarks;

  it('say what thin-plate formulas would miss, beyond a tenth', () => {
    expect(remarks(0.02, 0.019)).toEqual(['first']);
    expect(remarks(0.02, 0.0179)[1]).toBe(
      'Transverse shear accounts for 2.10 um (11 %) of the bow: thin-plate formulas would miss it on a head this stocky.',
    );
    expect(remarks(0.02, 0.025)[1]).toMatch(/^Transverse shear takes 5\.00 um \(25 %\) off the bow/);
    // A tenth to the digit is not beyond it.
    expect(remarks(0.5, 0.45)).toEqual(['first']);
    expect(verdictOf({ bow: 0.03 }, [bowed(0.02)], none, []).remarks).toEqual([]);
  });
});
