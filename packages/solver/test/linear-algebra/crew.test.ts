import { Worker } from 'node:worker_threads';
import { afterAll, describe, expect, it } from 'vitest';
import { startNodeCrew } from '../../node/crew.ts';
import './relaxed-simd.ts';
import { availableKernels } from '../../src/linear-algebra/compiled-kernel.ts';
import type { Crew } from '../../src/linear-algebra/crew.ts';
import { type FactorOptions, factorise } from '../../src/linear-algebra/factor.ts';
import { PLAN } from '../../src/linear-algebra/front-table.ts';
import { graphOf } from '../../src/linear-algebra/graph.ts';
import { order } from '../../src/linear-algebra/order.ts';
import { solve } from '../../src/linear-algebra/solve.ts';
import { analyse } from '../../src/linear-algebra/symbolic.ts';
import { grid, randomSystem, uniform } from './systems.ts';

const drawing = grid(140, 110);
const matrix = randomSystem(drawing.n, drawing.edges, 3);
const symbolic = analyse(matrix, order(graphOf(matrix), drawing.x, drawing.y));
const f = Float64Array.from({ length: 3 * matrix.n }, uniform(4));
const crews = [1, 2].map(startNodeCrew);
const compiled = availableKernels().filter(({ name }) => name !== 'plain');

/** Bits of the solution; the memory goes back, so that the next factor starts from one that has been used. */
function solution(options: FactorOptions): BigUint64Array {
  const factor = factorise(symbolic, matrix, options);
  const u = solve(factor, f);
  factor.memory.release();
  return new BigUint64Array(u.buffer);
}

/** Numbers in which two solutions differ: a list of differences of all of them would take minutes to print. */
function different(a: BigUint64Array, b: BigUint64Array): number {
  return a.reduce((count, bits, i) => count + (bits === b[i] ? 0 : 1), 0);
}

describe('factor shared by a crew', () => {
  afterAll(async () => {
    for (const crew of crews) await crew.end();
  });

  it('has fronts to share', () => {
    expect(symbolic.schedule.top.length).toBeGreaterThan(3);
  });

  for (const kernel of compiled)
    it(`has the bits of a single thread with two and with three (${kernel.name}), in fresh memory and in used`, () => {
      const alone = solution({ kernel });
      for (let round = 0; round < 8; round++) {
        for (const crew of [null, ...crews]) expect(different(solution({ kernel, crew }), alone)).toBe(0);
      }
    });

  it('is done without helpers that never come', () => {
    const absent = { helpers: 2, solves: true, call: () => undefined };
    for (const kernel of compiled) expect(different(solution({ kernel, crew: absent }), solution({ kernel }))).toBe(0);
  });

  it('is done alone when a helper dies in the middle of its part, and so are those after it', () => {
    for (const kernel of compiled) {
      let calls = 0;
      const dying: Crew = {
        helpers: 1,
        solves: false,
        patience: 200,
        // Comes on board, claims a task, and is never heard of again.
        call({ memory, plan }) {
          calls++;
          const words = new Int32Array(memory.buffer);
          Atomics.add(words, plan / 4 + PLAN.crew, 1);
          Atomics.add(words, plan / 4 + PLAN.nextTask, 1);
        },
      };
      for (let round = 0; round < 2; round++)
        expect(different(solution({ kernel, crew: dying }), solution({ kernel }))).toBe(0);
      expect(calls).toBe(1);
    }
  });

  it('waits as long for a slow helper in the last of many solves as in the first', async () => {
    // Takes a task of each solve and says 60 ms later that it is done.
    const slow = new Worker(
      `const { parentPort } = require('node:worker_threads');
      parentPort.on('message', ({ memory, plan }) => {
        const words = new Int32Array(memory.buffer);
        if (Atomics.add(words, plan / 4 + ${PLAN.nextSolve}, 1) >= words[plan / 4 + ${PLAN.taskCount}]) return;
        Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 60);
        Atomics.add(words, plan / 4 + ${PLAN.solvesDone}, 1);
      });`,
      { eval: true },
    );
    const crew: Crew = {
      helpers: 1,
      solves: true,
      patience: 8000,
      call: ({ memory, plan, solve }) => solve > 0 && slow.postMessage({ memory, plan }),
    };
    const factor = factorise(symbolic, matrix, { kernel: compiled[0], crew });
    expect(() => {
      for (let k = 0; k < 15; k++) solve(factor, f);
    }).not.toThrow();
    await slow.terminate();
  });

  it('is solved with alone when a helper dies in the middle of its part of a solve, and so are those after it', () => {
    // Waits for a solve to open, claims a task of it and is never heard of again.
    const dying = new Worker(
      `const { parentPort } = require('node:worker_threads');
      parentPort.on('message', ({ memory, plan, solve, news }) => {
        const words = new Int32Array(memory.buffer);
        Atomics.store(news, 0, solve);
        Atomics.notify(news, 0);
        while (Atomics.load(words, plan / 4 + ${PLAN.opened}) < solve);
        if (Atomics.add(words, plan / 4 + ${PLAN.nextSolve}, 1) >= words[plan / 4 + ${PLAN.taskCount}]) return;
        Atomics.store(news, 1, solve);
        process.exit();
      });`,
      { eval: true },
    );
    const news = new Int32Array(new SharedArrayBuffer(8));
    let called = 0;
    const crew: Crew = {
      helpers: 1,
      solves: true,
      patience: 2000,
      call({ memory, plan, solve }) {
        called = solve;
        if (solve === 0) return;
        dying.postMessage({ memory, plan, solve, news });
        while (Atomics.load(news, 0) < solve) Atomics.wait(news, 0, solve - 1, 100);
      },
    };
    const kernel = compiled[0];
    const factor = factorise(symbolic, matrix, { kernel, crew });
    const expected = solution({ kernel });
    // Whoever is late finds no task left, and tries again in the next solve.
    for (let k = 0; k < 400 && Atomics.load(news, 1) === 0; k++)
      expect(different(new BigUint64Array(solve(factor, f).buffer), expected)).toBe(0);
    const died = Atomics.load(news, 1);
    expect(died).toBeGreaterThan(0);
    for (let k = 0; k < 3; k++) expect(different(new BigUint64Array(solve(factor, f).buffer), expected)).toBe(0);
    expect(different(solution({ kernel, crew }), expected)).toBe(0);
    expect(called).toBe(died);
  });

  it('names the same node of a matrix that is not definite, whoever meets it', () => {
    const value = matrix.value.slice();
    for (const node of [3000, 9000]) value[9 * (matrix.start[node + 1] - 1) + 4] *= -1;
    const message = (options: FactorOptions) => {
      try {
        factorise(symbolic, { ...matrix, value }, options);
        return 'definite';
      } catch (thrown) {
        return String(thrown);
      }
    };
    for (const kernel of compiled) {
      const alone = message({ kernel });
      expect(alone).toMatch(/node (3000|9000), dof 1/);
      for (const crew of crews) expect(message({ kernel, crew })).toBe(alone);
    }
  });

  it('is given up when it is no longer wanted, and the crew is there for the next', () => {
    for (const kernel of compiled) {
      let asked = 0;
      const stopped = () => ++asked > 3;
      expect(() => factorise(symbolic, matrix, { kernel, crew: crews[0], stopped })).toThrow(/newer/);
      expect(asked).toBe(4);
      expect(different(solution({ kernel, crew: crews[0] }), solution({ kernel }))).toBe(0);
    }
  });
});
