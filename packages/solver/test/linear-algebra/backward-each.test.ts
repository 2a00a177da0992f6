import { afterAll, describe, expect, it } from 'vitest';
import { startNodeCrew } from '../../node/crew.ts';
import './relaxed-simd.ts';
import { availableKernels } from '../../src/linear-algebra/compiled-kernel.ts';
import { factorise } from '../../src/linear-algebra/factor.ts';
import { graphOf } from '../../src/linear-algebra/graph.ts';
import { order } from '../../src/linear-algebra/order.ts';
import { backward, backwardEach, forward } from '../../src/linear-algebra/solve.ts';
import { analyse } from '../../src/linear-algebra/symbolic.ts';
import { grid, randomSystem, uniform } from './systems.ts';

const drawing = grid(140, 110);
const matrix = randomSystem(drawing.n, drawing.edges, 3);
const symbolic = analyse(matrix, order(graphOf(matrix), drawing.x, drawing.y));
const crew = startNodeCrew(1);

/** Whether two vectors have the same bits; a list of their differences would take minutes to print. */
function same(a: Float64Array, b: Float64Array): boolean {
  return Buffer.compare(Buffer.from(a.buffer), Buffer.from(b.buffer)) === 0;
}

describe('backwardEach', () => {
  afterAll(() => crew.end());

  for (const kernel of availableKernels())
    for (const helped of [null, crew])
      it(`gives each of more vectors than fit at once the bits it has alone (${kernel.name}${helped ? ', shared' : ''})`, () => {
        const factor = factorise(symbolic, matrix, { kernel, crew: helped });
        const { vectors } = factor.memory;
        expect(vectors).toBeGreaterThan(2);
        const ys = Array.from({ length: vectors + 2 }, (_, k) =>
          forward(factor, Float64Array.from({ length: 3 * matrix.n }, uniform(k + 1))),
        );
        const alone = ys.map((y) => backward(factor, y));
        const each = backwardEach(factor, ys);
        expect(each.map((x, k) => same(x, alone[k]))).toEqual(ys.map(() => true));
        expect(same(alone[0], alone[1])).toBe(false);
        factor.memory.release();
      });
});
