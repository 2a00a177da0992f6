import type { SolverService } from '@flathead/solver';
import { wrap } from 'comlink';
import type { Connect, Connection } from './runner.ts';

let started = 0;

/**
 * Starts the solver in a worker. Its death is heard of by an error event, or by the release of the lock it holds.
 *
 * @param helped with helper threads where memory can be shared
 * @returns the connection for who listens to a death from now on; one that happened before is told at once
 */
function startWorker(helped = true): (onLost: (reason: string) => void) => Connection {
  const name = `flathead-solver-${Date.now().toString(36)}-${++started}${helped ? '' : '-alone'}`;
  const worker = new Worker(new URL('./solver-worker.ts', import.meta.url), { type: 'module', name });
  let death: string | null = null;
  let tell: ((reason: string) => void) | null = null;
  const lost = (reason: string): void => {
    death ??= reason;
    tell?.(death);
  };
  worker.addEventListener('error', (event) => lost(event.message || 'it could not be started'));
  worker.addEventListener('messageerror', () => lost('its answer could not be read'));
  worker.addEventListener('message', ({ data }) => {
    if (data === 'holding') void navigator.locks?.request(name, () => lost('it ended unexpectedly'));
  });
  return (onLost) => {
    tell = onLost;
    if (death !== null) queueMicrotask(() => lost(death ?? ''));
    const newest = crossOriginIsolated ? new Int32Array(new SharedArrayBuffer(4)) : null;
    return { service: wrap<SolverService>(worker), newest, close: () => worker.terminate() };
  };
}

/** Starts a solver now, while the rest of the page still loads; it serves the first that connects. */
export function earlySolver(): Connect {
  let early: ReturnType<typeof startWorker> | null = startWorker();
  return (onLost) => {
    const connect = early ?? startWorker();
    early = null;
    return connect(onLost);
  };
}

/** Solvers that leave the other processors to the bench. */
export const backgroundSolver: Connect = (onLost) => startWorker(false)(onLost);
