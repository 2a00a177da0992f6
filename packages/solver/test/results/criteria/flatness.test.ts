import { describe, expect, it } from 'vitest';
import { flatness } from '../../../src/results/criteria/flatness.ts';
import { caseOf, judgementOf, siteOf } from './case-of.ts';

const flat = { leastSquares: { total: 0.03, peak: 0.02, valley: 0.01, rms: 0.01 }, minimumZone: 0.025 };
const worstSite = (...values: number[]) =>
  flatness.read(caseOf({ flatness: flat, sites: values.map((value, i) => siteOf(`A${i + 1}`, { flatness: value })) }));

describe('flatness as a criterion', () => {
  it('is the minimum zone of the site area as a whole', () => {
    expect(worstSite(0.001)).toEqual({ value: 0.025, site: 'A1' });
    expect(flatness.limit({ bow: 0.03, flatness: 0.04 })).toBe(0.04);
  });

  it('names the least flat site, the first of equals', () => {
    expect(worstSite(0.001, 0.003, 0.002)!.site).toBe('A2');
    expect(worstSite(0.003, 0.001, 0.002)!.site).toBe('A1');
    expect(worstSite(0.001, 0.003, 0.003)!.site).toBe('A2');
  });

  it('says how flat, against which limit, and where least', () => {
    expect(flatness.sentence(judgementOf({ value: 0.0125, limit: 0.01 }))).toBe(
      'The site area is flat within 12.5 um in case "mounted", 2.5 um over the 10.0 um limit; site B3 is the least flat.',
    );
  });
});
