import { describe, expect, it } from 'vitest';
import { toGlobal } from '../../src/assembly/holds.ts';
import { multiply } from '../../src/linear-algebra/multiply.ts';
import type { PlateProblem } from '../../src/plate/plate-problem.ts';
import { addMotion } from '../../src/supports/rigid-motion.ts';
import { onThree, solved } from '../structure/solved.ts';
import { freePlate } from './free-plate.ts';

/** Slanted on the right, straight below; its centre of gravity is far from the origin. */
const outline = {
  polygon: [
    [100, 40],
    [160, 40],
    [184, 72],
    [100, 80],
  ] as [number, number][],
};
const [below, slanted] = [
  { from: [100, 40], to: [160, 40] },
  { from: [160, 40], to: [184, 72] },
] as { from: [number, number]; to: [number, number] }[];
const structureOf = (problem: Partial<PlateProblem>) => {
  // Rigid points everywhere hold whatever the edges leave.
  const supports = [{ at: [110, 70] }, { at: [150, 50] }, { at: [130, 75] }] as PlateProblem['supports'];
  return solved({ ...onThree, outline, supports, mesh: { size: 12 }, ...problem }).structure;
};

describe('rigid motions that only supports hold back', () => {
  it.each([
    [3, 'a free plate', {}],
    [1, 'a hinge leaves the turn about it', { edges: [{ along: below, held: 'simple' }] }],
    [1, 'a slanted hinge too', { edges: [{ along: slanted, held: 'simple' }] }],
    [2, 'a line of symmetry leaves lift and the turn across it', { edges: [{ along: slanted, held: 'symmetry' }] }],
    [0, 'a clamped side leaves none', { edges: [{ along: slanted, held: 'clamped' }] }],
    [0, 'two hinges leave none', { edges: [below, slanted].map((along) => ({ along, held: 'simple' })) }],
    [0, 'nor does a foundation', { foundations: [{ over: 'all', modulus: 1e-3 }] }],
    [
      3,
      'a plate that stretches',
      { section: { join: 'bonded', layers: [{ E: 66000, nu: 0.29, thickness: 4, bottom: 0 }] } },
    ],
  ] as [number, string, Partial<PlateProblem>][])('are %i: %s', (count, _, changes) => {
    const { motion, stiffness, holds, mesh, norm } = structureOf(changes);
    expect(motion.count).toBe(count);
    expect(motion.fields).toHaveLength(count);
    const free = motion.fields.map((field) => {
      for (const force of multiply(stiffness, field)) expect(Math.abs(force)).toBeLessThan(1e-12 * norm);
      const u = field.slice();
      toGlobal(holds, u);
      // A plane: w,y = thetaX and w,x = -thetaY, the same everywhere.
      const [w0, slopeY, slopeX] = [u[0], u[1], -u[2]];
      mesh.x.forEach((x, i) => {
        const plane = w0 + slopeX * (x - mesh.x[0]) + slopeY * (mesh.y[i] - mesh.y[0]);
        expect(u[3 * i]).toBeCloseTo(plane, 10);
        expect(u[3 * i + 1]).toBeCloseTo(slopeY, 10);
        expect(u[3 * i + 2]).toBeCloseTo(-slopeX, 10);
      });
      return u;
    });
    // Of order one: no more than lift and both tilts of one together, and no less than one of them.
    for (const u of free) {
      const largest = Math.max(...Array.from(mesh.x, (_, i) => Math.abs(u[3 * i])));
      expect(largest).toBeGreaterThan(0.5);
      expect(largest).toBeLessThan(2);
    }
  });

  it('are three that no two others make up: an orthonormal mix of lift and two tilts over half the longer side', () => {
    const { motion, x, y } = freePlate(3, 2);
    // The plate is 12 by 8 about (6, 4): coefficients of 1, (x - 6)/6 and (y - 4)/6.
    const mix = motion.fields.map((field) => {
      const [slopeX, slopeY] = [-field[2], field[1]];
      return [field[0] - slopeX * (x[0] - 6) - slopeY * (y[0] - 4), 6 * slopeX, 6 * slopeY];
    });
    mix.forEach((one, i) => {
      mix.forEach((other, j) => {
        const product = one.reduce((sum, value, k) => sum + value * other[k], 0);
        expect(product).toBeCloseTo(i === j ? 1 : 0, 9);
      });
    });
  });

  it('are added to a field by their amplitudes, three at once or fewer', () => {
    const { motion } = freePlate(2, 2);
    const given = Float64Array.from({ length: motion.fields[0].length }, (_, i) => Math.sin(i));
    for (const count of [3, 2, 1, 0]) {
      const fields = motion.fields.slice(0, count);
      const u = given.slice();
      addMotion({ count, fields }, [2, -3, 5], u);
      u.forEach((value, i) => {
        const added = fields.reduce((sum, field, r) => sum + [2, -3, 5][r] * field[i], 0);
        expect(value).toBeCloseTo(given[i] + added, 12);
      });
    }
  });
});
