import { describe, expect, it } from 'vitest';
import type { PlateProblem } from '../../src/plate/plate-problem.ts';
import { surfaceRisk } from '../../src/results/surface-risk.ts';
import { unitAreaStrength } from '../../src/results/weibull.ts';
import { solvedStress } from './solved-stress.ts';

/** ASTM C1161 B: span 40, width 4, depth 3 mm, loaded at the quarter points. */
const [L, w, d] = [40, 4, 3];
const P = 600;
/** Fully articulated four-point-1/4: `sigma = 3 P L / (4 w d^2)` (ASTM C1161). */
const largest = (3 * P * L) / (4 * w * d ** 2);

const bar = (nu: number): PlateProblem => ({
  plate: 1,
  outline: { rectangle: [L, w] },
  section: { E: 320_000, nu, thickness: d },
  edges: [-1, 1].map((side) => ({
    along: { from: [(side * L) / 2, -w / 2] as [number, number], to: [(side * L) / 2, w / 2] as [number, number] },
    held: 'simple' as const,
  })),
  loads: [-1, 1].map((side) => ({
    along: { from: [(side * L) / 4, -w / 2] as [number, number], to: [(side * L) / 4, w / 2] as [number, number] },
    force: P / 2,
  })),
  // Strips that the mesh follows: the moment has kinks at the loads.
  regions: [{ shape: { rectangle: [L / 2, w] }, section: { E: 320_000, nu, thickness: d } }],
  mesh: { size: 0.8 },
});

describe('risk over the surface of a four-point bar', () => {
  const beam = solvedStress(bar(0));
  const ceramic = solvedStress(bar(0.22));

  it.each([3, 5, 10, 15, 20])('m = %d: effective area within 1 %% of ASTM C1683', (m) => {
    const closed = (L * (w + d / (m + 1)) * (m + 2)) / (2 * (m + 1));
    for (const { part, stress } of [beam, ceramic]) {
      const area = surfaceRisk(part, stress, { modulus: m, strength: largest });
      expect(Math.abs(area / closed - 1)).toBeLessThan(0.01);
    }
  });

  it.each([5, 10, 20])('m = %d: the sides of the bar are the term d/(m + 1), the faces the term w', (m) => {
    const { part, stress } = beam;
    const scatter = { modulus: m, strength: largest };
    const none = new Int16Array(part.section.length);
    const sides = surfaceRisk(part, stress, scatter, none);
    const along = (L * (m + 2)) / (2 * (m + 1));
    expect(Math.abs(sides / ((along * d) / (m + 1)) - 1)).toBeLessThan(0.01);
    expect(Math.abs((surfaceRisk(part, stress, scatter) - sides) / (along * w) - 1)).toBeLessThan(0.01);
  });

  it('breaks 1 - 1/e of the bars at their characteristic strength, which is above their mean', () => {
    const { part, stress } = beam;
    const failure = (is: 'mean' | 'characteristic', m: number) =>
      -Math.expm1(
        -surfaceRisk(part, stress, { modulus: m, strength: unitAreaStrength({ strength: largest, is, modulus: m }) }),
      );
    for (const m of [5, 10, 20]) expect(failure('characteristic', m)).toBeCloseTo(1 - Math.exp(-1), 2);
    // Mean of a Weibull distribution with m = 2: sqrt(pi)/2 of the characteristic, hence P = 1 - exp(-pi/4) there.
    expect(failure('mean', 2)).toBeCloseTo(1 - Math.exp(-Math.PI / 4), 2);
  });
});
