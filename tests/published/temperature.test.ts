import { type PlateProblem, solvePlate } from '@flathead/solver';
import { describe, expect, it } from 'vitest';

/** Alumina plate, 30 K warmer on its upper face. */
const [E, nu, thickness, alpha, gradient] = [320_000, 0.22, 5, 6.5e-6, 30];
const D = (E * thickness ** 3) / (12 * (1 - nu * nu));
const k0 = (alpha * gradient) / thickness;
const at: [number, number][] = [
  [0, 0],
  [14, -3],
  [-22.5, 11],
];
const plate: PlateProblem = {
  plate: 1,
  outline: { rectangle: [60, 40] },
  section: { E, nu, thickness },
  temperature: { gradient, alpha },
  mesh: { size: 3 },
  report: { at },
};

/** Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, Art. 14: thermal stresses in plates. */
describe('a plate warmer on one face', () => {
  for (const theory of ['thin', 'shear'] as const) {
    it(`becomes a sphere of curvature alpha dT/t without moments when free to (${theory})`, () => {
      // Three supports hold the sphere at 0 without bending it: w = -k0/2 (x^2 + y^2) + plane through the supports.
      const { w, moments, reactions } = solvePlate({
        ...plate,
        theory,
        supports: [{ at: [-30, -20] }, { at: [30, -20] }, { at: [0, 20] }],
      });
      const sphere = (x: number, y: number): number => (k0 / 2) * (x * x + y * y);
      const slope = (sphere(0, 20) - sphere(30, -20)) / 40;
      at.forEach(([x, y], i) => {
        const exact = sphere(30, -20) + slope * (y + 20) - sphere(x, y);
        expect(w.at[i] / exact).toBeCloseTo(1, 8);
        expect(Math.abs(moments.at[i].mxx) / (D * k0)).toBeLessThan(1e-8);
      });
      for (const reaction of reactions) expect(Math.abs(reaction)).toBeLessThan(1e-6);
    });

    it(`stays flat under the moment D (1 + nu) alpha dT/t when clamped all round (${theory})`, () => {
      const { w, moments } = solvePlate({ ...plate, theory, edges: [{ along: 'all', held: 'clamped' }] });
      expect(Math.max(w.max.value, -w.min.value)).toBeLessThan(1e-12);
      for (const { mxx, myy, mxy } of moments.at) {
        // Cold fibres below are pulled: with the upper face warm the held plate bends the other way.
        expect(mxx / (-D * (1 + nu) * k0)).toBeCloseTo(1, 8);
        expect(myy / (-D * (1 + nu) * k0)).toBeCloseTo(1, 8);
        expect(Math.abs(mxy) / (D * k0)).toBeLessThan(1e-8);
      }
    });
  }
});
