import { describe, expect, it } from 'vitest';
import { backward, forward } from '../../src/linear-algebra/solve.ts';
import { grounded, grounding } from '../../src/supports/grounding.ts';
import { onThree, solved } from '../structure/solved.ts';
import { denseOf, freePlate } from './free-plate.ts';

describe('grounding', () => {
  it('stands on three nodes that span half the plate, the most that three nodes can', () => {
    const { motion, ground, x, y } = freePlate(9, 6);
    expect(motion.count).toBe(3);
    const [a, b, c] = ground.nodes;
    const cross = (x[b] - x[a]) * (y[c] - y[a]) - (x[c] - x[a]) * (y[b] - y[a]);
    expect(Math.abs(cross) / 2).toBeGreaterThan(0.45 * 12 * 8);
  });

  it('adds a spring on w as stiff as its node, and leaves the stiffness given as it is', () => {
    const { K, ground } = freePlate(3, 2);
    const [free, held] = [denseOf(K), denseOf(grounded(K, ground))];
    const on = [...ground.nodes].map((node) => 3 * node);
    expect(new Set(on).size).toBe(3);
    held.forEach((row, i) => {
      row.forEach((value, j) => {
        expect(value).toBe(i === j && on.includes(i) ? 2 * free[i][i] : free[i][j]);
      });
    });
  });

  it('carries nothing once loads balance: the plate does not move at its springs', () => {
    const { factor, ground, n } = freePlate(9, 6);
    const f = new Float64Array(3 * n);
    // A force down between two half as large up, on one line.
    for (const [node, force] of [
      [34, -2],
      [32, 1],
      [36, 1],
    ])
      f[3 * node] = force;
    const u = backward(factor, forward(factor, f));
    expect(Math.abs(u[3 * 34])).toBeGreaterThan(1e-4);
    for (const node of ground.nodes) expect(Math.abs(u[3 * node])).toBeLessThan(1e-9 * Math.abs(u[3 * 34]));
  });

  it('of a plate on a hinge is one spring on the side that is farthest from it', () => {
    const { stiffness, motion, mesh } = solved({
      ...onThree,
      edges: [{ along: { from: [-30, -20], to: [30, -20] }, held: 'simple' }],
      supports: [{ at: [0, 10] }],
    }).structure;
    const { nodes } = grounding(stiffness, motion);
    expect(nodes).toHaveLength(1);
    expect(mesh.y[nodes[0]]).toBeCloseTo(20, 12);
  });
});
