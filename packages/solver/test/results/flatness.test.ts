import { describe, expect, it } from 'vitest';
import { flatness } from '../../src/results/flatness.ts';
import { moved, randomPoints, rotation, surface } from './point-sets.ts';

describe('flatness', () => {
  const a = 0.012;

  it('of a square with corners at +-a in turn is 2a, a, a, a', () => {
    const { leastSquares, minimumZone } = flatness(Float64Array.of(0, 0, a, 1, 0, -a, 1, 1, a, 0, 1, -a));
    expect(leastSquares.total).toBeCloseTo(2 * a, 15);
    expect(leastSquares.peak).toBeCloseTo(a, 15);
    expect(leastSquares.valley).toBeCloseTo(a, 15);
    expect(leastSquares.rms).toBeCloseTo(a, 15);
    expect(minimumZone).toBeCloseTo(2 * a, 15);
  });

  it('of a regular triangle with an apex h over its centre has its least-squares plane at h/4', () => {
    const h = 0.02;
    const third = (2 * Math.PI) / 3;
    const corners = [0, 1, 2].flatMap((k) => [30 * Math.cos(k * third), 30 * Math.sin(k * third), 0]);
    const { leastSquares, minimumZone } = flatness(Float64Array.of(...corners, 0, 0, h));
    expect(leastSquares.peak).toBeCloseTo(0.75 * h, 15);
    expect(leastSquares.valley).toBeCloseTo(0.25 * h, 15);
    expect(leastSquares.total).toBeCloseTo(h, 15);
    expect(leastSquares.rms).toBeCloseTo(h * Math.sqrt((3 / 16 + 9 / 16) / 4), 15);
    expect(minimumZone).toBeCloseTo(h, 15);
  });

  it('measures normal to the plane: a tilt b added along z takes a factor 1/sqrt(1 + b^2) and nothing else', () => {
    const field = surface(5, 300, (x, y) => 2e-5 * (x * x - x * y));
    const b = 0.3;
    const tilted = field.map((v, k) => (k % 3 === 2 ? v + b * field[k - 1] : v));
    const [level, steep] = [flatness(field).leastSquares, flatness(tilted).leastSquares];
    for (const key of ['total', 'peak', 'valley', 'rms'] as const)
      expect(steep[key] / level[key]).toBeCloseTo(1 / Math.sqrt(1 + b * b), 5); // the field itself slopes by 1e-5
  });

  it('is the same for a plate turned in space, to the square of its flatness over its extent', () => {
    const field = surface(6, 300, (x, y) => 2e-5 * (x * x - x * y));
    const [level, turned] = [flatness(field), flatness(moved(field, rotation(0.3, -0.2, 1.1), [40, 2, -9]))];
    for (const key of ['total', 'peak', 'valley', 'rms'] as const)
      expect(turned.leastSquares[key] / level.leastSquares[key]).toBeCloseTo(1, 3);
    expect(turned.minimumZone / level.minimumZone).toBeCloseTo(1, 9);
  });

  it.each(Array.from({ length: 20 }, (_, seed) => seed))(
    'total = peak + valley, no narrower than the minimum zone, rms within, seed %i',
    (seed) => {
      const { leastSquares, minimumZone } = flatness(randomPoints(seed, 40, [60, 30, 0.04]));
      expect(leastSquares.total).toBeCloseTo(leastSquares.peak + leastSquares.valley, 15);
      expect(minimumZone).toBeLessThan(leastSquares.total);
      expect(leastSquares.rms).toBeLessThan(Math.max(leastSquares.peak, leastSquares.valley));
    },
  );

  it.each([
    ['no point', []],
    ['one point', [1, 2, 3]],
    ['two points', [1, 2, 3, 4, 5, 6]],
    ['three points', [0, 0, 1, 7, 0, -2, 1, 5, 3]],
  ])('of %s is 0', (_, points) => {
    const { leastSquares, minimumZone } = flatness(Float64Array.from(points));
    for (const value of [...Object.values(leastSquares), minimumZone]) expect(value).toBeCloseTo(0, 14);
  });
});
