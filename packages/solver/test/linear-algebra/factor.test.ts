import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Fault } from '../../src/fault/fault.ts';
import type { BlockMatrix } from '../../src/linear-algebra/block-matrix.ts';
import { factorise } from '../../src/linear-algebra/factor.ts';
import { graphOf } from '../../src/linear-algebra/graph.ts';
import { order } from '../../src/linear-algebra/order.ts';
import { solve } from '../../src/linear-algebra/solve.ts';
import { analyse } from '../../src/linear-algebra/symbolic.ts';
import { chain, type Drawing, grid, grillage, randomDrawing, randomSystem, uniform } from './systems.ts';

const factorOf = (K: BlockMatrix, { x, y }: Drawing) => factorise(analyse(K, order(graphOf(K), x, y)), K);

const diagonal = (K: BlockMatrix, node: number, dof: number) => 9 * (K.start[node + 1] - 1) + 4 * dof;

/** The fault of a factorisation; anything but a refusal fails the test. */
function refusal(K: BlockMatrix, drawing: Drawing): Fault {
  try {
    factorOf(K, drawing);
  } catch (thrown) {
    if (thrown instanceof Fault) return thrown;
    throw thrown;
  }
  throw new Error('not refused');
}

const changed = (K: BlockMatrix, change: (value: Float64Array) => void): BlockMatrix => {
  const value = K.value.slice();
  change(value);
  return { ...K, value };
};

describe('factorise', () => {
  const drawing = grid(20, 15);
  const K = randomSystem(drawing.n, drawing.edges, 3);

  it.each([
    ['a negative stiffness', -1],
    ['no stiffness', 0],
    ['a stiffness that is no number', Number.NaN],
    ['an infinite stiffness', Infinity],
  ])('names the node with %s', (_, wrong) => {
    for (const node of [0, 137, drawing.n - 1])
      for (const dof of [0, 1, 2]) {
        const alone = changed(K, (value) => {
          // Cut off from its neighbours, so that the pivot is the entry itself.
          for (let i = 0; i < K.n; i++)
            for (let k = K.start[i]; k < K.start[i + 1]; k++)
              if (i === node || K.column[k] === node) value.fill(0, 9 * k, 9 * k + 9);
          for (let a = 0; a < 3; a++) value[diagonal(K, node, a)] = 1;
          value[diagonal(K, node, dof)] = wrong;
        });
        const fault = refusal(alone, drawing);
        expect(fault.code).toBe('NOT_DEFINITE');
        expect(fault.details).toMatchObject({ node, dof });
        expect(fault.message).toContain(`node ${node}`);
      }
  });

  it.each([
    [6, 5],
    [30, 25],
    [90, 70],
  ])('refuses a free grillage of %i by %i nodes: it moves as a rigid plate', (nx, ny) => {
    const free = grid(nx, ny);
    expect(refusal(grillage(free), free).code).toBe('NOT_DEFINITE');
  });

  it.each([
    ['wide', grid(60, 45)],
    ['long', grid(300, 4)],
  ])('accepts a %s grillage on three springs, as soft as one node', (_, free) => {
    const K = grillage(free);
    const held = changed(K, (value) => {
      for (const node of [0, free.n - 1, Math.round(free.n / 2)]) value[diagonal(K, node, 0)] *= 2;
    });
    const u = solve(factorOf(held, free), new Float64Array(3 * free.n).fill(1));
    expect(u.every(Number.isFinite)).toBe(true);
  });

  it.each([
    [2 * Number.EPSILON, true],
    [1e-12, false],
  ])('takes a pivot of %d of its diagonal for rounding: %s', (left, refused) => {
    const one = chain(1);
    const K = changed(randomSystem(1, [], 1), (value) => {
      value.set([1, 1, 0, 1, 1 + left, 0, 0, 0, 1]);
    });
    if (refused) expect(refusal(K, one).details).toMatchObject({ node: 0, dof: 1 });
    else expect(() => factorOf(K, one)).not.toThrow();
  });

  it('gives finite numbers or a refusal for any symmetric matrix', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 40 }), fc.integer({ min: 0, max: 1e6 }), (n, seed) => {
        const some = randomDrawing(n, 2 * n, seed);
        const next = uniform(seed);
        const definite = randomSystem(n, some.edges, seed);
        const K = changed(definite, (value) => {
          for (let i = 0; i < n; i++) for (let a = 0; a < 3; a++) value[diagonal(definite, i, a)] *= 1.2 * next();
        });
        try {
          const u = solve(factorOf(K, some), new Float64Array(3 * n).fill(1));
          return u.every(Number.isFinite);
        } catch (thrown) {
          return thrown instanceof Fault && thrown.code === 'NOT_DEFINITE' && (thrown.details.node as number) < n;
        }
      }),
      { numRuns: 100, seed: 7 },
    );
  });

  it('refuses a chain whose last spring pulls it apart', () => {
    const line = chain(50);
    const K = randomSystem(50, line.edges, 9);
    const apart = changed(K, (value) => {
      value[diagonal(K, 49, 2)] = -1e-3;
    });
    expect(refusal(apart, line).details).toHaveProperty('node');
  });

  it('is deterministic to the last bit', () => {
    const once = factorOf(K, drawing).memory.value;
    const again = factorOf(K, drawing).memory.value;
    expect(again).toEqual(once);
  });
});
