import type { SolverService } from '@flathead/solver';
import { wrap } from 'comlink';
import type { Connect } from './runner.ts';

let started = 0;

/** Starts the solver in a worker. Its death is heard of by an error event, or by the release of the lock it holds. */
export const connectWorker: Connect = (onLost) => {
  const name = `flathead-solver-${Date.now().toString(36)}-${++started}`;
  const worker = new Worker(new URL('./solver-worker.ts', import.meta.url), { type: 'module', name });
  worker.addEventListener('error', (event) => onLost(event.message || 'it could not be started'));
  worker.addEventListener('messageerror', () => onLost('its answer could not be read'));
  worker.addEventListener('message', ({ data }) => {
    if (data === 'holding') void navigator.locks?.request(name, () => onLost('it ended unexpectedly'));
  });
  return { service: wrap<SolverService>(worker), close: () => worker.terminate() };
};
