import { Worker } from 'node:worker_threads';
import type { Crew } from '../src/linear-algebra/crew.ts';

/** A helper: takes part in the plan that it is sent to, in a memory that it shares. */
const HELPER = `
  require('node:worker_threads').parentPort.on('message', ({ module, memory, plan }) => {
    new WebAssembly.Instance(module, { env: { memory } }).exports.help(plan);
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
    call(module, memory, plan) {
      for (const worker of workers) worker.postMessage({ module, memory, plan });
    },
    async end() {
      await Promise.all(workers.map((worker) => worker.terminate()));
    },
  };
}
