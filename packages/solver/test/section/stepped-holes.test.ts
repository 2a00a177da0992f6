import { Matrix, solve } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { drilledCompliance } from '../../src/section/drilled.ts';
import { drilledRigidity } from '../../src/section/drilled-rigidity.ts';
import type { HoleArray } from '../../src/section/hole-array.ts';

const solid = { E: 320_000, nu: 0.22, thickness: 5 };
const holes: HoleArray = { pitch: 0.35, diameter: 0.16, pattern: 'square' };
const bored = (depth: number, side: 'board' | 'device' = 'board', diameter = 0.26): HoleArray => ({
  ...holes,
  counterbore: { diameter, depth, side },
});
const rigidity = (array: HoleArray) => drilledRigidity({ ...solid, holes: array }, 'holes');

/** Stiffness in its plane of a layer of the array, E of the solid included. */
function inPlane(diameter: number): Matrix {
  const { S11, S12, S66 } = drilledCompliance({ ...holes, diameter }, solid.nu, 'holes');
  const Q = solve(
    new Matrix([
      [S11, S12, 0],
      [S12, S11, 0],
      [0, 0, S66],
    ]),
    Matrix.eye(3),
  );
  return Q.mul(solid.E);
}

describe('counterbored holes', () => {
  it('bend as the laminate of a thousand slices free to stretch, minimum of energy over the six strains', () => {
    const depth = 1.7;
    const { bending } = rigidity(bored(depth));
    const [A, B, D] = [Matrix.zeros(3, 3), Matrix.zeros(3, 3), Matrix.zeros(3, 3)];
    const slices = 1000;
    const [wide, narrow] = [inPlane(0.26), inPlane(0.16)];
    for (let k = 0; k < slices; k++) {
      const dz = solid.thickness / slices;
      const z = -solid.thickness / 2 + (k + 0.5) * dz;
      const Q = z < depth - solid.thickness / 2 ? wide : narrow;
      A.add(Matrix.mul(Q, dz));
      B.add(Matrix.mul(Q, dz * z));
      D.add(Matrix.mul(Q, dz * z * z));
    }
    const condensed = Matrix.sub(D, B.mmul(solve(A, B)));
    expect(bending[0] / condensed.get(0, 0)).toBeCloseTo(1, 5);
    expect(bending[1] / condensed.get(0, 1)).toBeCloseTo(1, 5);
    expect(bending[5] / condensed.get(2, 2)).toBeCloseTo(1, 5);
  });

  it('shear as two bonded bars do: I = I1 + I2 + e^2 A1 A2/(A1 + A2) in stiffness of either layer (exact)', () => {
    const depth = 2;
    const [q1, q2] = [inPlane(0.26).get(2, 2), inPlane(0.16).get(2, 2)];
    const [t1, t2] = [depth, solid.thickness - depth];
    const own = (q1 * t1 ** 3 + q2 * t2 ** 3) / 12;
    const steiner = ((solid.thickness / 2) ** 2 * (q1 * t1 * q2 * t2)) / (q1 * t1 + q2 * t2);
    expect(rigidity(bored(depth)).bending[5] / (own + steiner)).toBeCloseTo(1, 12);
  });

  it('give way to shear by the energy of the stresses that balance bending, slice by slice', () => {
    const [wide, narrow] = [0.26, 0.16].map((diameter) => inPlane(diameter).get(0, 0));
    // tau(z) = integral from the lower face of Q (n - z) dz / D for a unit shear force; 1/S = integral of tau^2 / G dz.
    for (const [depth, side] of [
      [1.7, 'board'],
      [1.7, 'device'],
      [3.2, 'board'],
    ] as const) {
      // biome-ignore format: steps
      const slices = 4000;
      const dz = solid.thickness / slices;
      const of = Array.from({ length: slices }, (_, k) => {
        const height = (k + 0.5) * dz;
        const diameter = (side === 'board' ? height : solid.thickness - height) < depth ? 0.26 : 0.16;
        const phi = (Math.PI * diameter ** 2) / 4 / holes.pitch ** 2;
        const G = (solid.E / 2 / (1 + solid.nu)) * ((1 - phi) / (1 + phi));
        return { z: height, Q: diameter === 0.26 ? wide : narrow, G };
      });
      const moment = (power: number) => of.reduce((sum, { z, Q }) => sum + Q * z ** power * dz, 0);
      const n = moment(1) / moment(0);
      const D = moment(2) - n * moment(1);
      let [carried, compliance] = [0, 0];
      for (const { z, Q, G } of of) {
        const half = (Q * (n - z) * dz) / 2;
        compliance += (((carried + half) / D) ** 2 / G) * dz;
        carried += 2 * half;
      }
      expect(rigidity(bored(depth, side)).shear![0] * compliance).toBeCloseTo(1, 3);
    }
  });

  it('tend to straight holes as the step becomes shallow or deep', () => {
    const wide = rigidity({ ...holes, diameter: 0.26 });
    const narrow = rigidity(holes);
    for (const k of [0, 1, 5]) {
      expect(rigidity(bored(1e-6)).bending[k] / narrow.bending[k]).toBeCloseTo(1, 3);
      expect(rigidity(bored(4.999999)).bending[k] / wide.bending[k]).toBeCloseTo(1, 3);
    }
    // 5/6 G t of the parabola comes out of the balance of stresses.
    expect(rigidity(bored(1e-6)).shear![0] / narrow.shear![0]).toBeCloseTo(1, 3);
    expect(rigidity(bored(4.999999)).shear![0] / wide.shear![0]).toBeCloseTo(1, 3);
  });

  it('bend alike whichever face is bored, softer with depth, and turn with their rows', () => {
    expect([...rigidity(bored(1.2, 'device')).bending]).toEqual(
      [...rigidity(bored(1.2)).bending].map((v) => expect.closeTo(v, 6)),
    );
    const D11 = [0.5, 1, 2, 3].map((depth) => rigidity(bored(depth)).bending[0]);
    for (let k = 1; k < D11.length; k++) expect(D11[k]).toBeLessThan(D11[k - 1]);
    expect(rigidity({ ...bored(1), angle: 45 }).bending[0]).toBeLessThan(0.95 * rigidity(bored(1)).bending[0]);
  });

  it.each([
    [bored(1, 'board', 0.16), 'holes.counterbore.diameter', 'wider'],
    [bored(5), 'holes.counterbore.depth', 'less than 5 mm'],
    [bored(1, 'board', 0.3), 'holes.counterbore.diameter', '0.140 to 0.280 mm'],
    [{ ...bored(1), diameter: 0.1 }, 'holes.diameter', '0.140 to 0.280 mm'],
  ] as const)('are refused when they make no sense: %o', (array, path, hint) => {
    expect(() => rigidity(array)).toThrowError(
      expect.objectContaining({
        code: 'OUT_OF_RANGE',
        path,
        message: expect.stringContaining(path === 'holes.counterbore.depth' ? 'shallower' : hint),
      }),
    );
  });
});
