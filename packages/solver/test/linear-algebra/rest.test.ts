import { Worker } from 'node:worker_threads';
import { afterAll, describe, expect, it } from 'vitest';
import { FUSED_SHARED, SIMD_SHARED } from '../../src/linear-algebra/kernel-binary.ts';
import './relaxed-simd.ts';

/*
 * A worker that has nothing left to do waits until the others are done with their tasks, however long they take. Run in a
 * thread that has just compiled the kernel: the first compiler of some engines got this wrong, the second did not.
 */

/** Waits for the tasks of the plan at 0, again and again, and says how many were done when the kernel stopped waiting. */
const WAITER = `
  const { parentPort, workerData: { binary, memory } } = require('node:worker_threads');
  const rest = (counter, now) => void Atomics.wait(new Int32Array(memory.buffer), counter >>> 2, now, 0.05);
  const kernel = new WebAssembly.Instance(new WebAssembly.Module(binary), { env: { memory, rest } }).exports;
  parentPort.on('message', () => {
    kernel.closeTasks(0);
    parentPort.postMessage(Atomics.load(new Int32Array(memory.buffer), 12));
  });
`;

/** Words of a plan: see ../../kernel/factor.ts. */
const PLAN = { taskCount: 2, crew: 8, places: 9, tasksDone: 12 };
const TASKS = 9;

const waiters: Worker[] = [];

function after(ms: number): Promise<void> {
  return new Promise((resolve) => {
    setTimeout(resolve, ms);
  });
}

describe('a worker that waits for the tasks of others', () => {
  afterAll(async () => {
    for (const waiter of waiters) await waiter.terminate();
  });

  for (const [name, base64] of Object.entries({ FUSED_SHARED, SIMD_SHARED }))
    it(`goes on when all are done and not before (${name})`, { timeout: 10_000 }, async () => {
      const memory = new WebAssembly.Memory({ initial: 4, maximum: 65536, shared: true });
      const words = new Int32Array(memory.buffer);
      const waiter = new Worker(WAITER, { eval: true, workerData: { binary: Buffer.from(base64, 'base64'), memory } });
      waiters.push(waiter);
      for (let round = 0; round < 10; round++) {
        words.fill(0, 0, 32);
        words[PLAN.taskCount] = TASKS;
        words[PLAN.crew] = 2;
        words[PLAN.places] = 2;
        const done = new Promise((resolve) => {
          waiter.once('message', resolve);
        });
        waiter.postMessage(null);
        for (let k = 0; k < TASKS; k++) {
          await after(2);
          Atomics.add(words, PLAN.tasksDone, 1);
        }
        expect(await done).toBe(TASKS);
      }
    });
});
