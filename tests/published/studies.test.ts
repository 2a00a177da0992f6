import { describe, expect, it } from 'vitest';
import { capability } from '../../packages/solver/src/studies/tolerance/sample-statistics.ts';
import { type SobolIndex, sobolIndices } from '../../packages/solver/src/studies/tolerance/sobol-indices.ts';
import { unitSamples } from '../../packages/solver/src/studies/tolerance/unit-samples.ts';

/** Indices of a function of independent uniform numbers between 0 and 1. */
function indicesOf(f: (u: readonly number[]) => number, dimensions: number, count: number, seed: number): SobolIndex[] {
  const point = unitSamples('sobol', seed, 2 * dimensions, count);
  const blocks = Array.from({ length: count }, (_, j) => {
    const ab = [...point(j)];
    const [a, b] = [ab.slice(0, dimensions), ab.slice(dimensions)];
    return [f(a), f(b), ...a.map((_, i) => f(a.with(i, b[i])))];
  });
  return sobolIndices(blocks, seed)!;
}

/** Within 0.01 of what is published. */
function expectIndices(found: readonly SobolIndex[], first: readonly number[], total: readonly number[]): void {
  found.forEach((index, i) => {
    expect(Math.abs(index.first - first[i]), `first ${i}`).toBeLessThan(0.01);
    expect(Math.abs(index.total - total[i]), `total ${i}`).toBeLessThan(0.01);
  });
}

describe('Sobol indices', () => {
  // Ishigami and Homma 1990: sin x1 + 7 sin^2 x2 + 0.1 x3^4 sin x1, x uniform from -pi to pi. S and ST: physics.
  const ishigami = (u: readonly number[]): number => {
    const [x, y, z] = u.map((one) => Math.PI * (2 * one - 1));
    return Math.sin(x) + 7 * Math.sin(y) ** 2 + 0.1 * z ** 4 * Math.sin(x);
  };

  it.each([1, 2, 3])('of the Ishigami function are 0.3139, 0.4424, 0 and 0.5576, 0.4424, 0.2437 (seed %i)', (seed) => {
    const found = indicesOf(ishigami, 3, 8192, seed);
    expectIndices(found, [0.3139, 0.4424, 0], [0.5576, 0.4424, 0.2437]);
    for (const { firstError, totalError } of found) {
      expect(firstError).toBeLessThan(0.05);
      expect(totalError).toBeLessThan(0.05);
    }
  });

  // Linear model: S_i = ST_i = a_i^2 sigma_i^2 / sum; a uniform number has variance 1/12. Here 16, 4, 1, 0 over 21.
  it('of a linear model are the shares of the variance', () => {
    const shares = [16, 4, 1, 0].map((share) => share / 21);
    const linear = (u: readonly number[]): number => 100 + 4 * u[0] - 2 * u[1] + u[2];
    expectIndices(indicesOf(linear, 4, 1024, 5), shares, shares);
  });

  it('lie within their stated errors in most of 40 seeds', () => {
    const exact = { first: [0.3139, 0.4424, 0], total: [0.5576, 0.4424, 0.2437] };
    let within = 0;
    for (let seed = 100; seed < 140; seed++)
      indicesOf(ishigami, 3, 256, seed).forEach(({ first, total, firstError, totalError }, i) => {
        if (Math.abs(first - exact.first[i]) <= firstError) within += 1;
        if (Math.abs(total - exact.total[i]) <= totalError) within += 1;
      });
    // 95 % of 240 asked for; errors by bootstrap take the points as random and are rather too wide.
    expect(within).toBeGreaterThan(0.93 * 240);
  });

  it('of a constant are none', () => {
    expect(
      sobolIndices(
        [
          [2, 2, 2],
          [2, 2, 2],
        ],
        1,
      ),
    ).toBeNull();
  });
});

describe('capability', () => {
  it('of a bow of mean 26 um and standard deviation 3 um against 35 um is (35 - 26) / 9 = 1', () => {
    // Four bows of mean 26: deviations -4, -1, 2, 3 square to 30; to 27 = 3 x 9 with 3 sqrt(27/30) of each.
    const bows = [-4, -1, 2, 3].map((deviation) => 26 + deviation * Math.sqrt(27 / 30));
    expect(capability(bows, 35, 'most', 0.95)!.value).toBeCloseTo(1, 12);
  });
});
