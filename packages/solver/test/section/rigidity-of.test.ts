import { describe, expect, it } from 'vitest';
import { freeCurvature } from '../../src/section/free-curvature.ts';
import { rigidityOf } from '../../src/section/rigidity-of.ts';
import type { Section } from '../../src/section/section.ts';

const bendingOf = (section: Section): number[] => [...rigidityOf(section, 'section').bending];
const layer = (E: number, thickness: number, bottom: number, nu = 0.3) => ({ E, nu, thickness, bottom });

describe('stiffness of a section', () => {
  it('is D = E t^3/(12 (1 - nu^2)) and kappa G t for a solid plate', () => {
    // Timoshenko and Woinowsky-Krieger eq. 3; Reissner 1945 for kappa = 5/6.
    const { bending, shear } = rigidityOf({ E: 210000, nu: 0.3, thickness: 4 }, 'section');
    const D = (210000 * 64) / (12 * 0.91);
    [D, 0.3 * D, 0, D, 0, 0.35 * D].forEach((value, c) => {
      expect(bending[c]).toBeCloseTo(value, 6);
    });
    const S = ((5 / 6) * 210000 * 4) / 2.6;
    [S, 0, S].forEach((value, c) => {
      expect(shear![c]).toBeCloseTo(value, 6);
    });
  });

  it('follows given rigidities, without shear', () => {
    expect(bendingOf({ D: 10, nu: 0.25 })).toEqual([10, 2.5, 0, 10, 0, 3.75]);
    const { bending, shear } = rigidityOf({ Dx: 10, Dy: 4, D1: 2, Dxy: 3 }, 'section');
    expect([...bending]).toEqual([10, 2, 0, 4, 0, 3]);
    expect(shear).toBeNull();
  });

  it('treats an isotropic plate given as orthotropic the same: Dxy = (1 - nu) D/2 makes H = D', () => {
    expect(bendingOf({ Dx: 10, Dy: 10, D1: 3, Dxy: 3.5 })).toEqual(bendingOf({ D: 10, nu: 0.3 }));
  });

  it('refuses a section that would give way', () => {
    expect(() => rigidityOf({ Dx: 4, Dy: 4, D1: -4, Dxy: 1 }, 'regions.2.section')).toThrowError(
      expect.objectContaining({
        code: 'OUT_OF_RANGE',
        path: 'regions.2.section.D1',
        message: expect.stringContaining('below 4'),
      }),
    );
  });

  it('adds up sliding layers, each about its own middle', () => {
    const both = rigidityOf({ layers: [layer(300000, 5, 0), layer(200000, 3, 5)], join: 'sliding' }, 'section');
    const alone = [
      rigidityOf({ E: 300000, nu: 0.3, thickness: 5 }, ''),
      rigidityOf({ E: 200000, nu: 0.3, thickness: 3 }, ''),
    ];
    for (let c = 0; c < 6; c++) expect(both.bending[c]).toBe(alone[0].bending[c] + alone[1].bending[c]);
    for (let c = 0; c < 3; c++) expect(both.shear![c]).toBe(alone[0].shear![c] + alone[1].shear![c]);
  });

  it('bends bonded layers of one material like one solid', () => {
    const stack = rigidityOf(
      { layers: [layer(1e5, 1, 2.5), layer(1e5, 2, 0.5), layer(1e5, 3, -2.5)], join: 'bonded' },
      'section',
    );
    const solid = rigidityOf({ E: 1e5, nu: 0.3, thickness: 6 }, 'section');
    for (let c = 0; c < 6; c++)
      expect(stack.bending[c] / (solid.bending[c] || 1)).toBeCloseTo(solid.bending[c] ? 1 : 0, 12);
    for (let c = 0; c < 3; c++) expect(stack.shear![c]).toBeCloseTo(solid.shear![c], 6);
  });

  it('bends a symmetric sandwich by parallel axes', () => {
    // Faces of 1 mm on a core of 4 mm: D = [E_c 4^3 + E_f (6^3 - 4^3)]/(12 (1 - nu^2)), classical laminate theory.
    const [bending] = bendingOf({ layers: [layer(2e5, 1, 0), layer(1e4, 4, 1), layer(2e5, 1, 5)], join: 'bonded' });
    expect(bending).toBeCloseTo((1e4 * 64 + 2e5 * (216 - 64)) / (12 * 0.91), 5);
  });

  it('refuses bonded layers that are not symmetric, saying what to do', () => {
    const eccentric: Section = { layers: [layer(3e5, 5, 0), layer(2e5, 3, 5)], join: 'bonded' };
    expect(() => rigidityOf(eccentric, 'section')).toThrowError(
      expect.objectContaining({
        code: 'NOT_YET',
        path: 'section.join',
        message: expect.stringMatching(/not symmetric about a common mid-plane.*"sliding".*level/s),
      }),
    );
  });

  it('refuses bonded layers that overlap or leave a gap', () => {
    const bonded = (...bottoms: number[]): Section => ({
      layers: bottoms.map((bottom) => layer(1e5, 2, bottom)),
      join: 'bonded',
    });
    expect(() => rigidityOf(bonded(0, 1.5), 'section')).toThrowError(
      expect.objectContaining({ code: 'OVERLAP', path: 'section.layers.1.bottom' }),
    );
    expect(() => rigidityOf(bonded(2.5, 0), 'section')).toThrowError(
      expect.objectContaining({ code: 'OUT_OF_RANGE', path: 'section.layers.0.bottom' }),
    );
  });
});

describe('free curvature under a temperature gradient', () => {
  it('is alpha dT/t, a dome along +z when the upper face is the hot one', () => {
    expect(freeCurvature({ E: 3e5, nu: 0.22, thickness: 5 }, 4, 6.5e-6, 'section')).toBeCloseTo(5.2e-6, 18);
  });

  it('needs a thickness', () => {
    expect(() => freeCurvature({ D: 1, nu: 0.3 }, 4, 6.5e-6, 'section')).toThrowError(
      expect.objectContaining({ code: 'NOT_YET' }),
    );
    expect(freeCurvature({ D: 1, nu: 0.3 }, 0, 6.5e-6, 'section')).toBe(0);
  });
});
