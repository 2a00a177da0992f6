import { parentPort } from 'node:worker_threads';
import { caseOfSeed } from './case-of-seed.ts';
import { outcomeOf } from './outcome.ts';

/* Runs the case of each seed that it is sent and answers with what became of it. */
parentPort?.on('message', (seed: number) => {
  const begin = performance.now();
  const given = caseOfSeed(seed);
  const answer = (label: string, failure: string | null) =>
    parentPort?.postMessage({ label, failure, ms: performance.now() - begin });
  try {
    answer(`${given.of}, ${given.kind}: ${outcomeOf(given)}`, null);
  } catch (thrown) {
    answer('', `${given.kind} ${given.of}: ${thrown instanceof Error ? thrown.message : String(thrown)}`);
  }
});
