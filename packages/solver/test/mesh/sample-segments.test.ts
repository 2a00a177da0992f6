import { describe, expect, it } from 'vitest';
import { Fault } from '../../src/fault/fault.ts';
import type { Arrangement } from '../../src/mesh/arrangement.ts';
import { sampleSegments } from '../../src/mesh/sample-segments.ts';

const along = (...ends: [number, number, number, number][]): Arrangement => ({
  x: Float64Array.from(ends.flatMap(([xa, , xb]) => [xa, xb])),
  y: Float64Array.from(ends.flatMap(([, ya, , yb]) => [ya, yb])),
  segments: Uint32Array.from({ length: 2 * ends.length }, (_, i) => i),
  bounds: ends.map(() => [0, 1]),
});

describe('segments cut into pieces', () => {
  it('are cut into the nearest whole number of equal ones where the size is the same all along', () => {
    for (const [size, count] of [
      [1, 5],
      [0.95, 5],
      [2, 3],
      [2.1, 2],
      [20, 1],
    ]) {
      const { x, y, pieces, onSegment, pieceSegment } = sampleSegments(
        along([1, 1, 4, 5], [7, 0, 9, 0]),
        () => size,
        100,
      );
      const own = Array.from(pieceSegment.keys()).filter((p) => pieceSegment[p] === 0);
      expect(own.length).toBe(count);
      own.forEach((p, k) => {
        const [a, b] = [pieces[2 * p], pieces[2 * p + 1]];
        expect([x[a], y[a]]).toEqual([
          expect.closeTo(1 + (3 * k) / count, 12),
          expect.closeTo(1 + (4 * k) / count, 12),
        ]);
        expect(Math.hypot(x[b] - x[a], y[b] - y[a])).toBeCloseTo(5 / count, 12);
        expect([onSegment[a], onSegment[b]]).toEqual([k === 0 ? -1 : 0, k === count - 1 ? -1 : 0]);
      });
    }
  });

  it('have the same share of the integral of 1 / size, in closed form where the size is linear', () => {
    // Integral of 1 / (h + g s) from 0 to s: ln(1 + g s / h) / g.
    const [h, g, length] = [0.2, 0.1, 10];
    const { x, pieces } = sampleSegments(along([0, 0, length, 0]), (px) => h + g * px, 1000);
    const whole = Math.log(1 + (g * length) / h) / g;
    const count = pieces.length / 2;
    expect(count).toBe(Math.round(whole));
    for (let k = 0; k < count; k++) {
      const share = Math.log(1 + (g * x[pieces[2 * k + 1]]) / h) / g / whole;
      // Read at 16 places: the chord of the integral over a step is off by step^2 / 8 times its curvature, g / h^2 at most.
      expect(Math.abs(share - (k + 1) / count)).toBeLessThan(((length / 16) ** 2 * g) / (8 * h * h * whole));
    }
  });

  it('are refused past the limit of nodes, where they lie', () => {
    const two = along([0, 0, 10, 0], [0, 5, 10, 5]);
    // 4 ends and 9 between them each.
    expect(sampleSegments(two, () => 1, 23).x.length).toBe(22);
    try {
      sampleSegments(two, () => 1, 22);
      expect.unreachable();
    } catch (thrown) {
      expect((thrown as Fault).code).toBe('TOO_LARGE');
      expect((thrown as Fault).details).toMatchObject({ where: [0, 5], expected: 'at most 22 nodes' });
    }
    expect(() => sampleSegments(two, () => Number.NaN, 1000)).toThrow(Fault);
  });
});
