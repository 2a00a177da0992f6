import type { Crew } from '../linear-algebra/crew.ts';

/** More helpers than this are kept waiting by memory. */
const MOST = 3;

/**
 * Starts helpers in workers of this page, as many as there are processors to spare.
 *
 * @returns `null` where memory can't be shared - a page that is not isolated - or there is one processor only
 */
export function startWebCrew(): Crew | null {
  const processors = navigator.hardwareConcurrency;
  if (!globalThis.crossOriginIsolated || !(processors > 1)) return null;
  // One processor for the solver and one for the page; of two, the page gives one up while a factor takes long.
  const helpers = Math.max(1, Math.min(MOST, processors - 2));
  const workers = Array.from(
    { length: helpers },
    (_, k) => new Worker(new URL('./helper.ts', import.meta.url), { type: 'module', name: `flathead-helper-${k + 1}` }),
  );
  return {
    helpers,
    solves: processors > 2,
    call(work) {
      for (const worker of workers) worker.postMessage(work);
    },
  };
}
