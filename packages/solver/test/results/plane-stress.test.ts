import { describe, expect, it } from 'vitest';
import { firstPrincipal, secondPrincipal, vonMises } from '../../src/results/plane-stress.ts';

/** Principal stresses p and q turned by an angle, degrees, behind two numbers of something else. */
function turned(p: number, q: number, degrees: number): Float64Array {
  const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  return Float64Array.of(9, 9, p * c * c + q * s * s, p * s * s + q * c * c, (p - q) * c * s);
}

describe('plane stress', () => {
  it('has the same principal stresses and the same von Mises stress in any axes', () => {
    for (const degrees of [0, 20, 45, 90, 133])
      for (const [p, q] of [
        [30, 10],
        [30, -10],
        [-5, -40],
        [7, 7],
      ]) {
        const stress = turned(p, q, degrees);
        expect(firstPrincipal(stress, 2)).toBeCloseTo(p, 10);
        expect(secondPrincipal(stress, 2)).toBeCloseTo(q, 10);
        // Half the sum of squared differences of the three principal stresses, the third of them zero.
        expect(vonMises(stress, 2)).toBeCloseTo(Math.sqrt(((p - q) ** 2 + p ** 2 + q ** 2) / 2), 10);
      }
  });

  it('of pure shear is as much tension as compression, and sqrt(3) times as much by von Mises', () => {
    const shear = Float64Array.of(0, 0, 8);
    expect([firstPrincipal(shear), secondPrincipal(shear)]).toEqual([8, -8]);
    expect(vonMises(shear)).toBeCloseTo(8 * Math.sqrt(3), 12);
  });
});
