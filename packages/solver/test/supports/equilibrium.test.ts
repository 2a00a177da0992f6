import { Matrix, solve as solveDense } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import type { SparseRow } from '../../src/linear-algebra/block-matrix.ts';
import { addScaled, dotDense } from '../../src/linear-algebra/half-solve.ts';
import { backward, forward } from '../../src/linear-algebra/solve.ts';
import { solveSupport } from '../../src/supports/compliance.ts';
import { equilibrium, react } from '../../src/supports/equilibrium.ts';
import { atNode, denseOf, freePlate } from './free-plate.ts';

const plate = freePlate(9, 6);

function deflect(supports: readonly { row: SparseRow; stiffness: number | null }[], f: Float64Array) {
  const solved = supports.map((support, i) =>
    solveSupport(plate.factor, plate.motion, { name: `S${i + 1}`, ...support }),
  );
  const system = equilibrium(solved, plate.motion.count);
  const y = forward(plate.factor, f);
  const seat = Float64Array.from(solved, ({ half }) => dotDense(half, y));
  const resultant = Float64Array.from(plate.motion.fields, (field) => field.reduce((sum, v, i) => sum + v * f[i], 0));
  const { force, motion } = react(system, seat, resultant);
  solved.forEach(({ half }, i) => {
    addScaled(y, force[i], half);
  });
  const u = backward(plate.factor, y);
  plate.motion.fields.forEach((field, r) => {
    for (let i = 0; i < u.length; i++) u[i] += motion[r] * field[i];
  });
  return { u, force };
}

/** The same plate with its supports as Lagrange multipliers of one dense system: nothing shared with the route above. */
function deflectDense(supports: readonly { row: SparseRow; stiffness: number | null }[], f: Float64Array) {
  const n = 3 * plate.n;
  const A = Matrix.zeros(n + supports.length, n + supports.length);
  A.setSubMatrix(denseOf(plate.K), 0, 0);
  // Multipliers in units of the stiffness, so that the saddle is well scaled.
  const unit = plate.K.value[0];
  supports.forEach(({ row, stiffness }, i) => {
    row.dof.forEach((dof, k) => {
      A.set(n + i, dof, unit * row.value[k]);
      A.set(dof, n + i, unit * row.value[k]);
    });
    if (stiffness !== null) A.set(n + i, n + i, -(unit * unit) / stiffness);
  });
  const x = solveDense(A, Matrix.columnVector([...f, ...supports.map(() => 0)])).to1DArray();
  return { u: x.slice(0, n), force: x.slice(n).map((v) => -unit * v) };
}

const average: SparseRow = { dof: Uint32Array.of(3 * 12, 3 * 13, 3 * 22), value: Float64Array.of(0.5, 0.25, 0.25) };
const load = new Float64Array(3 * plate.n);
load[3 * 31] = 4;
load[3 * 44 + 1] = -2;
load[3 * 8] = 1.5;

const cases = {
  'three rigid points': [0, 9, 65].map((node) => ({ row: atNode(node), stiffness: null })),
  'six rigid points, statically indeterminate': [0, 9, 34, 60, 69, 27].map((node) => ({
    row: atNode(node),
    stiffness: null,
  })),
  'springs of very different stiffness': [0, 9, 65, 60].map((node, i) => ({
    row: atNode(node),
    stiffness: 10 ** (2 * i),
  })),
  'an averaged bearing among springs and rigid points': [
    { row: average, stiffness: null },
    { row: atNode(9), stiffness: 5e4 },
    { row: atNode(65), stiffness: null },
    { row: atNode(60), stiffness: 2e3 },
  ],
};

describe('supports by flexibility', () => {
  for (const [name, supports] of Object.entries(cases))
    it(`give the deflection and reactions of one dense saddle system: ${name}`, () => {
      const ours = deflect(supports, load);
      const dense = deflectDense(supports, load);
      const largest = Math.max(...dense.u.map(Math.abs));
      dense.u.forEach((value, i) => {
        expect(Math.abs(ours.u[i] - value)).toBeLessThan(1e-8 * largest);
      });
      dense.force.forEach((value, i) => {
        expect(Math.abs(ours.force[i] - value)).toBeLessThan(1e-7);
      });
    });

  it('balance the load and move by their force over their stiffness', () => {
    const supports = cases['springs of very different stiffness'];
    const { u, force } = deflect(supports, load);
    expect(force.reduce((a, b) => a + b, 0)).toBeCloseTo(-5.5, 9);
    supports.forEach(({ row, stiffness }, i) => {
      expect(u[row.dof[0]]).toBeCloseTo(-force[i] / stiffness, 9);
    });
  });

  it('refuse two supports and name them and what they leave', () => {
    const two = [0, 9].map((node) => ({ row: atNode(node), stiffness: null }));
    expect(() => deflect(two, load)).toThrow(/Supports S1, S2 leave the plate free to rotate about one line/);
  });

  it('refuse supports on one line', () => {
    const line = [0, 4, 9].map((node) => ({ row: atNode(node), stiffness: 1e4 }));
    expect(() => deflect(line, load)).toThrow(
      /S1, S2, S3 leave the plate free to rotate about one line; add a support/,
    );
  });

  it('refuse none at all', () => {
    expect(() => deflect([], load)).toThrow(/Nothing holds the plate/);
  });

  it('refuse two rigid supports in one place', () => {
    const twice = [0, 9, 65, 65].map((node) => ({ row: atNode(node), stiffness: null }));
    expect(() => deflect(twice, load)).toThrow(/same place/);
  });
});
