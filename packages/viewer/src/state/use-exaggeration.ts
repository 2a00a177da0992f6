import { automaticExaggeration } from '../buffers/exaggeration.ts';
import type { Solved } from './run-store.ts';
import { boxOf } from './shape-box.ts';
import { shownCase } from './shown-case.ts';
import { useModel, usePointer, useRun, useView } from './use-workbench.ts';

interface Exaggeration {
  readonly factor: number;
  readonly automatic: boolean;
  /** Seen from above the head is drawn flat, so that places can be read. */
  readonly flat: boolean;
}

/** Factor on the deflection of the stage, and whether it was chosen by the user. */
export function useExaggeration(): Exaggeration {
  const flat = useView((view) => view.view === 'above');
  const length = useModel(({ body }) => Math.max(...boxOf(body.outline)));
  const limit = useModel(({ limits }) => limits.bow);
  const caseName = useView((view) => view.caseName);
  const chosen = useView((view) => view.exaggeration);
  const dragged = usePointer((pointer) => pointer.dragged !== null);
  const automatic = useRun(({ solved, full }) => {
    const largest = largestOf(solved, caseName);
    return automaticExaggeration(length, limit, largest, dragged && full ? largestOf(full, caseName) : largest);
  });
  return { factor: flat ? 0 : (chosen ?? automatic), automatic: chosen === null, flat };
}

/** Largest magnitude of the deviation shown, mm. */
function largestOf(answer: Solved | null, caseName: string | null): number {
  if (answer === null) return 0;
  let most = 0;
  for (const value of shownCase(answer.result, caseName).deviation) most = Math.max(most, Math.abs(value));
  return most;
}
