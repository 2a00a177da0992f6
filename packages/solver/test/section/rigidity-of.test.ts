import { inverse, Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { freeStrain } from '../../src/section/free-strain.ts';
import { membraneOf } from '../../src/section/membrane-of.ts';
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

  it('bends an unsymmetric stack about its own neutral surface', () => {
    // Two bonded bars: I = I1 + I2 + A1 A2 e^2/(A1 + A2), widths weighted by modulus (exact, parallel axes).
    const [E1, E2, t1, t2] = [3e5, 2e5, 5, 3];
    const section: Section = { layers: [layer(E1, t1, 0, 0), layer(E2, t2, t1, 0)], join: 'bonded' };
    const composite = (E1 * t1 ** 3 + E2 * t2 ** 3) / 12 + (E1 * t1 * E2 * t2 * 16) / (E1 * t1 + E2 * t2);
    expect(bendingOf(section)[0]).toBeCloseTo(composite, 5);
    const { offset } = membraneOf(section, 'section');
    expect(offset[0]).toBeCloseTo((E1 * t1 * 2.5 + E2 * t2 * 6.5) / (E1 * t1 + E2 * t2), 12);
    expect(offset[1]).toBeCloseTo(0, 12);
  });

  it('agrees with A, B, D of laminate theory for layers of unlike Poisson ratio', () => {
    // D* = D - B A^-1 B and C = A^-1 B with whole 3x3 matrices, about the lower face.
    const layers = [layer(3.7e5, 4, 0, 0.22), layer(2e5, 3, 4, 0.3), layer(7e4, 1, 7, 0.33)];
    const [A, B, D] = [0, 1, 2].map((power) =>
      layers.reduce(
        (sum, { E, nu, thickness, bottom }) => {
          const q = E / (1 - nu * nu);
          const Q = new Matrix([
            [q, nu * q, 0],
            [nu * q, q, 0],
            [0, 0, ((1 - nu) * q) / 2],
          ]);
          const n = power + 1;
          return sum.add(Q.mul(((bottom + thickness) ** n - bottom ** n) / n));
        },
        Matrix.zeros(3, 3),
      ),
    );
    const C = inverse(A).mmul(B);
    const expected = Matrix.sub(D, B.mmul(C));
    const { bending } = rigidityOf({ layers, join: 'bonded' }, 'section');
    const places = [0, 1, 2, 4, 5, 8];
    places.forEach((at, k) => {
      expect(bending[k] / expected.get(0, 0)).toBeCloseTo(expected.to1DArray()[at] / expected.get(0, 0), 12);
    });
    const { stretching, offset } = membraneOf({ layers, join: 'bonded' }, 'section');
    C.to1DArray().forEach((value, k) => {
      expect(offset[k]).toBeCloseTo(value, 12);
    });
    places.forEach((at, k) => {
      expect(stretching[k] / A.get(0, 0)).toBeCloseTo(A.to1DArray()[at] / A.get(0, 0), 12);
    });
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

describe('free strain in a temperature field', () => {
  const field = { change: 0, gradient: 0, over: null, alpha: 6.5e-6 };

  it('is alpha dT and alpha dT/t, a dome along +z when the upper face is the hot one', () => {
    const solid: Section = { E: 3e5, nu: 0.22, thickness: 5 };
    expect(freeStrain(solid, { ...field, gradient: 4 }, 'section').curvature).toBeCloseTo(5.2e-6, 18);
    expect(freeStrain(solid, { ...field, gradient: 4, over: 8 }, 'section').curvature).toBeCloseTo(3.25e-6, 18);
    expect(freeStrain({ ...solid, expansion: 1e-5 }, { ...field, change: 30 }, 'section').strain).toBeCloseTo(3e-4, 18);
  });

  it('bends two layers that are heated alike as Timoshenko found (1925, J. Opt. Soc. Am. 11)', () => {
    const [E1, E2, t1, t2] = [3.7e5, 2e5, 5, 3];
    const section: Section = {
      layers: [
        { ...layer(E1, t1, 0, 0), expansion: 6.5e-6 },
        { ...layer(E2, t2, t1, 0), expansion: 1.1e-5 },
      ],
      join: 'bonded',
    };
    const [m, n] = [t1 / t2, E1 / E2];
    const kappa =
      (6 * 4.5e-6 * 65 * (1 + m) ** 2) / ((t1 + t2) * (3 * (1 + m) ** 2 + (1 + m * n) * (m ** 2 + 1 / (m * n))));
    // The upper layer grows more: a dome along +z.
    expect(freeStrain(section, { ...field, change: 65 }, 'section').curvature / kappa).toBeCloseTo(1, 12);
  });

  it('does not depend on how one material is cut into layers', () => {
    const { strain, curvature } = freeStrain(
      { E: 2e5, nu: 0.3, thickness: 6 },
      { ...field, change: 20, gradient: 9 },
      's',
    );
    const cut: Section = { layers: [layer(2e5, 1, -3), layer(2e5, 2, -2), layer(2e5, 3, 0)], join: 'bonded' };
    const again = freeStrain(cut, { ...field, change: 20, gradient: 9 }, 's');
    expect(again.strain! / strain!).toBeCloseTo(1, 12);
    expect(again.curvature / curvature).toBeCloseTo(1, 12);
  });

  it('of sliding layers lies between those of the layers, nearer to the stiffer', () => {
    const sliding: Section = {
      layers: [
        { ...layer(2e5, 6, 0, 0), expansion: 1e-5 },
        { ...layer(2e5, 3, 6, 0), expansion: 1.9e-5 },
      ],
      join: 'sliding',
    };
    const { strain, curvature } = freeStrain(sliding, { ...field, change: 50, gradient: 9 }, 'section');
    expect(strain).toBeNull();
    // One kelvin a millimetre; stiffness 8 to 1.
    expect(curvature).toBeCloseTo((8 * 1e-5 + 1.9e-5) / 9, 18);
  });

  it('needs a thickness', () => {
    expect(() => freeStrain({ D: 1, nu: 0.3 }, { ...field, gradient: 4 }, 'section')).toThrowError(
      expect.objectContaining({ code: 'NOT_YET' }),
    );
    expect(freeStrain({ D: 1, nu: 0.3 }, { ...field, change: 4 }, 'section').curvature).toBe(0);
  });
});
