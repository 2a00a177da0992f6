import { type CheckRuns, createCheckRuns } from './check-runs.ts';
import type { ChecksAnswer } from './protocol.ts';

/** The runs of this visit, shown on the page Checks and told of in the report. */
export const checkRuns: CheckRuns = createCheckRuns((hear, lost) => {
  const worker = new Worker(new URL('./checks-worker.ts', import.meta.url), {
    type: 'module',
    name: 'flathead-checks',
  });
  worker.addEventListener('message', ({ data }: MessageEvent<ChecksAnswer>) => hear(data));
  worker.addEventListener('error', (event) => lost(event.message || 'it could not be started'));
  return worker;
});
