import { describe, expect, it } from 'vitest';
import type { PlateProblem } from '../../src/plate/plate-problem.ts';
import type { Section } from '../../src/section/section.ts';
import { isCoupled, rigiditiesOf, sectionsOf, temperatureOf } from '../../src/structure/sections.ts';

const ceramic: Section = { E: 320_000, nu: 0.22, thickness: 4, expansion: 7e-6 };
const steel: Section = { E: 200_000, nu: 0.27, thickness: 3, expansion: 11e-6 };
const layers = (join: 'bonded' | 'sliding'): Section => ({
  join,
  layers: [
    { E: 320_000, nu: 0.22, thickness: 4, bottom: -2, expansion: 7e-6 },
    { E: 200_000, nu: 0.27, thickness: 3, bottom: 2, expansion: 11e-6 },
  ],
});
const plate = (base: Section, over: Section | null, rest: Partial<PlateProblem> = {}): PlateProblem => ({
  plate: 1,
  outline: { rectangle: [60, 40] },
  section: base,
  ...(over === null ? {} : { regions: [{ shape: { rectangle: [10, 10] }, section: over }] }),
  ...rest,
});
const hot = { temperature: { change: 50 } };

describe('sections of a problem', () => {
  it('are the base, then those of the regions', () => {
    expect(sectionsOf(plate(ceramic, steel))).toEqual([ceramic, steel]);
    expect(sectionsOf(plate(ceramic, null))).toEqual([ceramic]);
  });

  it('are told apart by their path when one is no plate', () => {
    const bad: Section = { Dx: 1, Dy: 1, D1: 5, Dxy: 1 };
    const refused = (path: string) =>
      expect.objectContaining({ code: 'OUT_OF_RANGE', path: expect.stringMatching(path) });
    expect(() => rigiditiesOf(plate(ceramic, bad))).toThrow(refused('^regions\\.0\\.section'));
    expect(() => rigiditiesOf(plate(bad, steel))).toThrow(refused('^section'));
  });
});

describe('a plate stretches', () => {
  it('where it bends when its neutral surfaces differ: bonded on one side of part of it', () => {
    expect(isCoupled(plate(ceramic, steel))).toBe(false);
    expect(isCoupled(plate(ceramic, layers('bonded')))).toBe(true);
    expect(isCoupled(plate(ceramic, layers('sliding')))).toBe(false);
  });

  it('where it is heated when parts of it would expand differently', () => {
    expect(isCoupled(plate(ceramic, steel, hot))).toBe(true);
    expect(isCoupled(plate(steel, ceramic, { temperature: { change: -50 } }))).toBe(true);
    expect(isCoupled(plate(ceramic, { ...steel, expansion: 7e-6 }, hot))).toBe(false);
    expect(isCoupled(plate(ceramic, null, hot))).toBe(false);
    expect(isCoupled(plate(ceramic, steel, { temperature: { gradient: 20 } }))).toBe(false);
    // Sliding layers restrain nothing.
    expect(isCoupled(plate(ceramic, layers('sliding'), hot))).toBe(false);
    // A difference of one part in 1e13 is rounding.
    expect(isCoupled(plate(ceramic, { ...steel, expansion: 7e-6 * (1 + 1e-13) }, hot))).toBe(false);
    expect(isCoupled(plate(ceramic, { ...steel, expansion: 7e-6 * (1 + 1e-9) }, hot))).toBe(true);
  });
});

describe('temperature of a problem', () => {
  it('is nothing but what is given', () => {
    expect(temperatureOf(plate(ceramic, null))).toBeNull();
    expect(temperatureOf(plate(ceramic, null, hot))).toEqual({ change: 50, gradient: 0, over: null, alpha: 0 });
    const all = { change: 1, gradient: 2, over: 3, alpha: 4e-6 };
    expect(temperatureOf(plate(ceramic, null, { temperature: all }))).toEqual(all);
  });
});
