import { describe, expect, it } from 'vitest';
import type { Point } from '../../src/geometry/point.ts';
import { drilledCompliance } from '../../src/section/drilled.ts';
import { drilledMembrane } from './membrane.ts';

const relative = (value: number, expected: number) => Math.abs(value / expected - 1);

/** 8 x 8 holes at a pitch of 1 along the sides of the plate. */
function alongRows(): Point[] {
  return Array.from({ length: 64 }, (_, k) => [(k % 8) - 3.5, Math.floor(k / 8) - 3.5] as const);
}

/** 72 holes at a pitch of 1, their rows at 45 degrees to the sides of a plate of 6 cells of sqrt 2. */
function acrossRows(): Point[] {
  const cell = Math.SQRT2;
  return Array.from({ length: 72 }, (_, k) => {
    const offset = k % 2 === 0 ? 0.25 : 0.75;
    const [i, j] = [Math.floor(k / 2) % 6, Math.floor(k / 12)];
    return [(i - 3 + offset) * cell, (j - 3 + offset) * cell] as const;
  });
}

/** nu = 0: plane stress and plane strain are one, so that this is the constant of long holes as well. */
describe('a membrane of 8 x 8 holes, each of them meshed, against the effective constants', () => {
  it.each([0.3, 0.4, 0.5])(
    'ligament %d: along rows, across them, in shear and at 45 degrees within 2 percent',
    (mu) => {
      const diameter = 1 - mu;
      const { S11, S12, S66 } = drilledCompliance({ pitch: 1, diameter, pattern: 'square' }, 0, 'holes');
      const straight = drilledMembrane(8, 4, alongRows(), diameter, 0, 0.15);
      const turned = drilledMembrane(6 * Math.SQRT2, 4 * Math.SQRT2, acrossRows(), diameter, 0, 0.15);
      const diagonal = (2 * S11 + 2 * S12 + S66) / 4;
      console.info(
        `ligament ${mu}: E along rows ${(S11 / straight.get(0, 0)).toFixed(4)}, nu ${(straight.get(0, 1) / straight.get(0, 0) / (S12 / S11)).toFixed(4)}, G ${(S66 / straight.get(2, 2)).toFixed(4)}, E at 45 degrees ${(diagonal / turned.get(0, 0)).toFixed(4)} of the effective ones`,
      );
      expect(relative(straight.get(0, 0), S11)).toBeLessThan(0.02);
      expect(relative(straight.get(1, 1), S11)).toBeLessThan(0.02);
      expect(relative(straight.get(0, 1), S12)).toBeLessThan(0.02);
      expect(relative(straight.get(2, 2), S66)).toBeLessThan(0.02);
      expect(relative(turned.get(0, 0), diagonal)).toBeLessThan(0.02);
    },
  );
});
