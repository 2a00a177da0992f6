import { describe, expect, it } from 'vitest';
import type { Point } from '../../src/geometry/point.ts';
import { coarsenedCorners, singularCorners } from '../../src/structure/singular-corners.ts';

/** Away from the origin and turned, so that no term vanishes. */
const placed = (ring: readonly Point[]): Point[] =>
  ring.map(([x, y]) => [7 + 0.8 * x - 0.6 * y, -3 + 0.6 * x + 0.8 * y]);
/** Two sides of length 2 that meet at the origin with this interior angle, degrees, and one or two corners far off. */
const wedge = (angle: number): Point[] => {
  const at = (degrees: number): Point => [
    2 * Math.cos((degrees * Math.PI) / 180),
    2 * Math.sin((degrees * Math.PI) / 180),
  ];
  return placed([[0, 0], at(0), ...(angle > 90 ? [at(angle / 2)] : []), at(angle)]);
};
const cornerOf = (angle: number) =>
  singularCorners(wedge(angle)).find(({ at: [x, y] }) => Math.hypot(x - 7, y + 3) < 1e-12);

describe('singular corners of simply supported plates', () => {
  it('are those above 90 degrees that are no chords of a curve, graded by pi/alpha - 2', () => {
    for (const angle of [60, 89.9, 90, 170, 190]) expect(cornerOf(angle), `${angle}`).toBeUndefined();
    for (const [angle, singular] of [
      [120, 0.5],
      [135, 2 / 3],
      [150, 0.8],
      [240, 0.8],
      [270, 0.8],
    ]) {
      const corner = cornerOf(angle);
      expect(corner?.size, `${angle}`).toBeCloseTo(22_000 ** -singular, 12);
      expect(corner?.order, `${angle}`).toBeCloseTo(angle < 180 ? 360 / angle - 2 : 2 - 360 / angle, 9);
    }
  });

  it('are coarser in a coarser mesh by the power that makes their error grow with its square, near them only', () => {
    const [factor, own] = [1.5, 0.01];
    const size = coarsenedCorners(() => own, [{ at: [3, 4], size: 1, order: 1 }], factor, 1);
    // factor^(2/order - 1) more.
    expect(size(3, 4)).toBeCloseTo(own * factor, 12);
    expect(size(3 + 1.9 * own * factor, 4)).toBeCloseTo(own * factor, 12);
    expect(size(3, 4 + 2.1 * own * factor)).toBe(own);
    expect(coarsenedCorners(() => own, [{ at: [3, 4], size: 1, order: 0.25 }], 4, 0.5)(3, 4)).toBe(0.5);
    expect(coarsenedCorners(() => 2, [{ at: [3, 4], size: 1, order: 1 }], factor, 1)(3, 4)).toBe(2);
  });
});
