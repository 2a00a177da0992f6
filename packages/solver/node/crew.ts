import { Worker } from 'node:worker_threads';
import type { Crew } from '../src/linear-algebra/crew.ts';

/** A helper: takes part in the plan that it is sent to, in a memory that it shares. */
const HELPER = `
  const kernels = new Map();
  require('node:worker_threads').parentPort.on('message', ({ key, module, memory, plan, solve }) => {
    const rest = (counter, now) => void Atomics.wait(new Int32Array(memory.buffer), counter >>> 2, now, 0.05);
    const kernel = kernels.get(key) ?? new WebAssembly.Instance(module, { env: { memory, rest } }).exports;
    kernels.delete(key);
    kernels.set(key, kernel);
    for (const oldest of kernels.keys()) if (kernels.size > 4) kernels.delete(oldest);
    if (solve === 0) kernel.help(plan);
    else kernel.helpSolve(plan, solve);
  });
`;

/** Helpers on threads of Node. They don't keep the process alive. */
export interface NodeCrew extends Crew {
  end(): Promise<void>;
}

/** @param helpers how many, one less than the threads that shall work */
export function startNodeCrew(helpers: number): NodeCrew {
  const workers = Array.from({ length: helpers }, () => {
    const worker = new Worker(HELPER, { eval: true });
    worker.unref();
    return worker;
  });
  return {
    helpers,
    solves: true,
    call(work) {
      for (const worker of workers) worker.postMessage(work);
    },
    async end() {
      await Promise.all(workers.map((worker) => worker.terminate()));
    },
  };
}
