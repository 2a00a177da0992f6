import { describe, expect, it } from 'vitest';
import { contact, leastForce } from '../../../src/results/criteria/contact.ts';
import type { SiteResult } from '../../../src/results/head-result.ts';
import { caseOf, judgementOf, siteOf } from './case-of.ts';

const end = (minimum: number) => ({ minimum, mean: 1, spread: 0.1, compression: 0.2 });
const read = (...sites: SiteResult['contact'][]) =>
  contact.read(caseOf({ sites: sites.map((each, i) => siteOf(`A${i + 1}`, each ? { contact: each } : {})) }));
const board = (minimum: number) => ({ board: end(minimum), device: null });

describe('contact as a criterion', () => {
  it('is the least force at either end of any site', () => {
    expect(leastForce({ contact: { board: end(0.05), device: end(0.02) } })).toBe(0.02);
    expect(leastForce({ contact: { board: null, device: end(0.03) } })).toBe(0.03);
    expect(read(board(0.05), { board: end(0.06), device: end(0.02) }, board(0.04))).toEqual({
      value: 0.02,
      site: 'A2',
    });
    expect(contact.limit({ bow: 0.03, contactForce: 0.025 })).toBe(0.025);
  });

  it('is not judged where no site knows its force, and leaves out those that do not', () => {
    expect(read(undefined, { board: null, device: null })).toBeNull();
    expect(read(undefined, board(0.02))).toEqual({ value: 0.02, site: 'A2' });
  });

  it('names the first of sites within a thousandth of the least', () => {
    expect(read(board(0.05), board(0.0200199), board(0.02))).toEqual({ value: 0.02, site: 'A2' });
    expect(read(board(0.05), board(0.0200201), board(0.02))).toEqual({ value: 0.02, site: 'A3' });
    expect(read(board(0.05), board(0), board(0))).toEqual({ value: 0, site: 'A2' });
  });

  it('says what probes keep and how far that is from the limit', () => {
    expect(contact.sentence(judgementOf({ value: 0.021, limit: 0.025 }))).toBe(
      'Probes of site B3 keep 0.021 N in case "mounted", 0.0040 N short of the 0.025 N limit.',
    );
    expect(contact.sentence(judgementOf({ value: 0.5, limit: 0.025 }))).toMatch(/, 0\.475 N above the 0\.025 N limit/);
  });

  it('is told to a millinewton, a tenth of one below 10 mN, and three digits above 1 N', () => {
    const told = (value: number) => /keep (.*?) in/.exec(contact.sentence(judgementOf({ value, limit: 0.025 })))![1];
    expect([2.345, 1, 0.5, 0.01, 0.004, 0].map(told)).toEqual([
      '2.35 N',
      '1.00 N',
      '0.500 N',
      '0.010 N',
      '0.0040 N',
      '0.000 N',
    ]);
    expect(contact.sentence(judgementOf({ value: 0.025, limit: 0.025 }))).toMatch(/, 0\.000 N above the/);
  });
});
