import { Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { drilledCompliance } from '../../src/section/drilled.ts';
import { drilledRigidity } from '../../src/section/drilled-rigidity.ts';
import type { HoleArray } from '../../src/section/hole-array.ts';

const array = (pattern: HoleArray['pattern'], mu: number): HoleArray => ({ pitch: 1, diameter: 1 - mu, pattern });
const relative = (value: number, expected: number) => Math.abs(value / expected - 1);
const diagonal = ({ S11, S12, S66 }: ReturnType<typeof drilledCompliance>) => 4 / (2 * S11 + 2 * S12 + S66);

/** Thick plates, nu = 0.3, derived: periodic unit cell under generalised plane strain in quadratic finite elements. */
const thickSquare = [
  [0.2, 0.3111, 0.1227],
  [0.3, 0.4196, 0.2389],
  [0.4, 0.5252, 0.3799],
  [0.5, 0.63, 0.5323],
  [0.6, 0.7338, 0.6809],
];
const thickTriangular = [
  [0.2, 0.1553, 0.4574],
  [0.3, 0.2806, 0.354],
  [0.4, 0.412, 0.312],
  [0.5, 0.5446, 0.2994],
  [0.6, 0.6758, 0.2975],
];

/** ASME BPVC VIII-1, UHX-11, triangular, h/p >= 2 (published transcription): E over that of the solid, and nu, as quartics of mu. */
const UHX_E = [-0.0029, 0.2126, 3.9906, -6.173, 3.4307];
const UHX_NU = [0.9966, -4.1978, 9.0478, -7.9955, 2.2398];
const quartic = (coefficients: number[], mu: number) => coefficients.reduce((sum, c, k) => sum + c * mu ** k, 0);

describe('drilled plate', () => {
  it.each(thickSquare)('square, thick, mu = %d: E along rows and across the diagonal within 0.5 %%', (mu, E, E45) => {
    const compliance = drilledCompliance(array('square', mu), 0.3, 'holes');
    expect(relative(1 / compliance.S11, E)).toBeLessThan(0.005);
    expect(relative(diagonal(compliance), E45)).toBeLessThan(0.005);
  });

  it.each(thickTriangular)('triangular, thick, mu = %d: E and nu within 0.5 %%', (mu, E, nu) => {
    const compliance = drilledCompliance(array('triangular', mu), 0.3, 'holes');
    expect(relative(1 / compliance.S11, E)).toBeLessThan(0.005);
    expect(relative(-compliance.S12 / compliance.S11, nu)).toBeLessThan(0.005);
    // Isotropic: the same across the diagonal.
    expect(relative(diagonal(compliance), 1 / compliance.S11)).toBeLessThan(1e-12);
  });

  it.each([0.2, 0.25, 0.3, 0.35, 0.4, 0.45, 0.5, 0.55, 0.6])(
    'triangular, mu = %d: ASME VIII-1 UHX-11 within 1 %%, between the entries of the table too',
    (mu) => {
      const { S11, S12 } = drilledCompliance(array('triangular', mu), 0.3, 'holes');
      expect(relative(1 / S11, quartic(UHX_E, mu))).toBeLessThan(0.01);
      expect(relative(-S12 / S11, quartic(UHX_NU, mu))).toBeLessThan(0.01);
    },
  );

  it('square: the biaxial modulus that UHX-11 keeps, within 2 %', () => {
    // ASME BPVC VIII-1, UHX-11, square, h/p >= 2: one isotropic fit that keeps E*/(1 - nu*).
    const E = [0.0372, 1.0314, -0.6402, 2.6201, -2.1929];
    const nu = [0.3341, 0.126, -0.692, 0.6877, -0.06];
    for (const mu of [0.3, 0.4, 0.5]) {
      const { S11, S12 } = drilledCompliance(array('square', mu), 0.3, 'holes');
      expect(relative(1 / (S11 + S12), quartic(E, mu) / (1 - quartic(nu, mu)))).toBeLessThan(0.02);
    }
  });

  it('follows any nu of the solid: compliance in plane stress moves by nu alone (Cherkaev, Lurie, Milton 1992)', () => {
    // Rotating the frame of a cubic compliance can't tell E45 of one nu from another: 2 S12 + S66 stays put.
    const [a, b] = [0.2, 0.35].map((nu) => {
      const { S11, S12, S66 } = drilledCompliance(array('square', 0.4), nu, 'holes');
      const along = nu ** 2 / (1 - (Math.PI * 0.36) / 4);
      const strain = 1 - nu ** 2;
      return [(S11 - along) / strain, (2 * (S12 - along) + S66) / strain];
    });
    expect(relative(a[0], b[0])).toBeLessThan(1e-12);
    expect(relative(a[1], b[1])).toBeLessThan(1e-12);
  });

  it('turns with its rows: the tensor turned entry by entry', () => {
    const solid = { E: 66000, nu: 0.29, thickness: 4.5 };
    const holes = array('square', 0.35);
    const D = (angle: number) => {
      const [d11, d12, d13, d22, d23, d33] = drilledRigidity({ ...solid, holes: { ...holes, angle } }, 'holes').bending;
      return new Matrix([
        [d11, d12, d13],
        [d12, d22, d23],
        [d13, d23, d33],
      ]);
    };
    const [c, s] = [Math.cos(Math.PI / 9), Math.sin(Math.PI / 9)];
    // Curvatures {kxx, kyy, 2 kxy} in axes turned by 20 degrees.
    const T = new Matrix([
      [c * c, s * s, c * s],
      [s * s, c * c, -c * s],
      [-2 * c * s, 2 * c * s, c * c - s * s],
    ]);
    const turned = T.transpose().mmul(D(0)).mmul(T);
    expect(Matrix.sub(turned, D(20)).norm()).toBeLessThan(1e-9 * turned.norm());
    expect(Matrix.sub(D(90), D(0)).norm()).toBeLessThan(1e-9 * turned.norm());
    expect(Matrix.sub(D(45), D(0)).norm()).toBeGreaterThan(0.05 * turned.norm());
  });

  it.each([0.19, 0.61])('refuses a ligament efficiency of %d and says which holes it knows', (mu) => {
    expect(() => drilledCompliance(array('square', mu), 0.3, 'section.holes')).toThrowError(
      expect.objectContaining({
        code: 'OUT_OF_RANGE',
        path: 'section.holes.diameter',
        message: expect.stringContaining('0.400 to 0.800 mm'),
      }),
    );
  });
});
