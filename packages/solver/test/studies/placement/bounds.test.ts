import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { describe, expect, it } from 'vitest';
import type { Point } from '../../../src/geometry/point.ts';
import { minimumZone } from '../../../src/results/minimum-zone.ts';
import { enumeration, waysToChoose } from '../../../src/studies/placement/choices.ts';
import { images, orbitsOf } from '../../../src/studies/placement/orbits.ts';
import { zoneCut } from '../../../src/studies/placement/zone-cut.ts';

describe('a cut through the minimum zone', () => {
  it('is the zone itself on points without a tilt, and no plane changes it', () => {
    const generator = xoroshiro128plus(5);
    const pick = () => (generator.next() >>> 0) / 2 ** 32 - 0.5;
    for (let set = 0; set < 30; set++) {
      const points = Float64Array.from({ length: 3 * 60 }, (_, i) => (i % 3 === 2 ? 1e-3 * pick() : 40 * pick()));
      const cut = zoneCut(points)!;
      // Slopes are 1e-4 at most, so normal and vertical widths differ by 1e-8.
      expect(Math.abs(Math.abs(cut.height) / minimumZone(points) - 1)).toBeLessThan(1e-6);
      const tilted = points.map((value, i) =>
        i % 3 === 2 ? value + 0.3 + 0.02 * points[i - 2] - 0.01 * points[i - 1] : value,
      );
      const height = cut.points.reduce((sum, p, k) => sum + cut.share[k] * tilted[3 * p + 2], 0);
      expect(Math.abs(height - cut.height)).toBeLessThan(1e-12);
    }
  });

  it('is never above the zone on a grid, where many points lie on one line', () => {
    for (const bend of [0, 0.5, 1, -1]) {
      const points = Float64Array.from(
        Array.from({ length: 81 }, (_, i) => [(i % 9) - 4, Math.floor(i / 9) - 4]).flatMap(([x, y]) => [
          x,
          y,
          1e-4 * (x * x + bend * y * y),
        ]),
      );
      expect(Math.abs(zoneCut(points)!.height)).toBeLessThanOrEqual(minimumZone(points) * (1 + 1e-6));
    }
  });
});

describe('orbits and choices', () => {
  const line = [-2, -1, 0, 1, 2];
  const points = line.flatMap((y) => line.map((x): Point => [x, y]));
  const gaps = points.map(() => 1);

  it('come in fours, twos on a mirror, and one at the centre', () => {
    const sizes = orbitsOf(points, gaps, 'both', [0, 0], 0.1).map((orbit) => orbit.points.length);
    expect(sizes.sort()).toEqual([1, 2, 2, 2, 2, 4, 4, 4, 4]);
    expect(images([1, 2], 'x', [0.25, 9])).toEqual([
      [1, 2],
      [-0.5, 2],
    ]);
  });

  it('are counted as they are enumerated, each once', () => {
    const both = orbitsOf(points, gaps, 'both', [0, 0], 0.1);
    const free = orbitsOf(points, gaps, 'none', [0, 0], 0.1);
    const choices = [
      { orbits: both, count: 6 },
      { orbits: free, count: 1 },
    ];
    // Six of fours, twos and the centre: 4 + 2 or 2 + 2 + 2. A free one beside them may not be where they are.
    expect(waysToChoose(choices)).toBe((4 * 4 + 4) * 25);
    const seen = new Set<string>();
    const next = enumeration(choices, points, 0.5);
    for (let chosen = next(); chosen !== null; chosen = next()) {
      expect(new Set(chosen).size).toBe(7);
      seen.add(`${[...chosen.subarray(0, 6)].sort((a, b) => a - b)} ${chosen[6]}`);
    }
    expect(seen.size).toBe(20 * 19);
  });
});
