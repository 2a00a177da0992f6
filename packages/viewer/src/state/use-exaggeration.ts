import { automaticExaggeration } from '../buffers/exaggeration.ts';
import { boxOf } from './shape-box.ts';
import { shownCase } from './shown-case.ts';
import { useModel, useRun, useView } from './use-workbench.ts';

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
  const automatic = useRun(({ solved }) => {
    const deviation = solved ? shownCase(solved.result, caseName).deviation : [];
    return automaticExaggeration(length, limit, largestMagnitude(deviation));
  });
  return { factor: flat ? 0 : (chosen ?? automatic), automatic: chosen === null, flat };
}

function largestMagnitude(values: ArrayLike<number>): number {
  let most = 0;
  for (let i = 0; i < values.length; i++) most = Math.max(most, Math.abs(values[i]));
  return most;
}
