import { describe, expect, it } from 'vitest';
import type { HeadModel } from '../../src/model/head-model.ts';
import { lettingGo, losingContact, slidingOnBoard } from '../../src/results/case-remarks.ts';
import type { FastenerResult } from '../../src/results/head-result.ts';
import { twoByTwo } from '../model/two-by-two.ts';
import { caseOf, siteOf } from './criteria/case-of.ts';

const fastener = (name: string, holds: boolean): FastenerResult => ({
  ...{ name, at: [0, 0], reaction: 0, w: 0, holds, stiffness: null, terms: null, joint: null },
});
const left = (minimum: number) => ({ board: { minimum, mean: 1, spread: 0, compression: 0 }, device: null });

describe('remarks on load cases', () => {
  it('name every fastener that has let go, with its case', () => {
    const cases = [
      caseOf({ name: 'a', fasteners: [fastener('F1', true), fastener('F2', false)] }),
      caseOf({ name: 'b', fasteners: [fastener('F1', false), fastener('F2', true)] }),
    ];
    expect(lettingGo(cases)).toEqual(['Fastener F2 lets go in case "a".', 'Fastener F1 lets go in case "b".']);
  });

  it('name the first site whose probes come off the board, count the others, and say which way the answer is off', () => {
    const lost = caseOf({
      sites: [siteOf('A1', { contact: left(0.01) }), siteOf('A2', { contact: left(0) }), siteOf('A3', {})],
    });
    const all = caseOf({ name: 'b', sites: ['A1', 'A2'].map((name) => siteOf(name, { contact: left(0) })) });
    expect(losingContact(twoByTwo, [caseOf({ sites: [siteOf('A1', { contact: left(0.01) })] })])).toEqual([]);
    expect(losingContact(twoByTwo, [lost])[0]).toMatch(
      /^Probes of site A2 come off the board in case "mounted": .* overstates the bow\.$/,
    );
    const relaxing = { ...twoByTwo.sites, probes: { ...twoByTwo.sites.probes, rate: 0.5, relax: true } };
    expect(losingContact({ ...twoByTwo, sites: relaxing }, [lost, all])).toEqual([
      expect.stringMatching(/^Probes of site A2 .* and at 2 more places: .* understates the bow\.$/),
    ]);
  });

  it('say how far the outermost fastener slides in the hottest or coldest case, from 20 degC', () => {
    const cases = (...temperatures: (number | undefined)[]): HeadModel => ({
      ...twoByTwo,
      materials: { 'alumina-96': { E: 320_000, nu: 0.22, expansion: 7e-6 } },
      fasteners: [{ name: 'F1', at: [3, 4] }, { name: 'F2', at: [-30, 40] }, ...twoByTwo.fasteners],
      cases: temperatures.map((temperature, i) => ({
        name: `case ${i}`,
        ...(temperature === undefined ? {} : { temperature }),
      })),
    });
    expect(slidingOnBoard(cases(undefined, 20))).toEqual([]);
    // 7e-6 * 60 K * 50 mm = 21 um; and colder by more.
    expect(slidingOnBoard(cases(undefined, 80))[0]).toMatch(/^In case "case 1" .* moves by 21\.0 um with the body/);
    expect(slidingOnBoard(cases(80, -60, undefined))[0]).toMatch(/^In case "case 1" .* moves by 28\.0 um with/);
  });
});
