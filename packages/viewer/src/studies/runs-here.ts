import type { StudyService } from '@flathead/solver';
import { proxy, wrap } from 'comlink';
import type { Workbench } from '../state/workbench.ts';
import { createStudyRuns, type StudyRuns } from './study-runs.ts';

/** Workers that make rows at once; one processor is left to the bench. */
export const CREW = Math.max(1, Math.min(4, (navigator.hardwareConcurrency || 2) - 1));

/** The studies of this visit. */
export const studyRuns: StudyRuns = createStudyRuns((onLost) => {
  const worker = new Worker(new URL('./study-worker.ts', import.meta.url), { type: 'module', name: 'flathead-study' });
  worker.addEventListener('error', (event) => onLost(event.message || 'it could not be started'));
  worker.addEventListener('messageerror', () => onLost('its answer could not be read'));
  return { service: wrap<StudyService>(worker), close: () => worker.terminate(), forWorker: proxy };
}, CREW);

const watched = new WeakSet<Workbench>();

/** Has studies wait between their rows while the bench is solved or dragged on. */
export function yieldToBench(workbench: Workbench): void {
  if (watched.has(workbench)) return;
  watched.add(workbench);
  const { run, pointer } = workbench;
  const look = (): void => studyRuns.allow(run.getState().solving === null && pointer.getState().dragged === null);
  run.subscribe(look);
  pointer.subscribe(look);
  look();
}
