import { automaticExaggeration } from '../buffers/exaggeration.ts';
import { boxOf } from './shape-box.ts';
import { shownCase } from './shown-case.ts';
import { useModel, useRun, useView } from './use-workbench.ts';

/** Factor on the deflection of the stage, and whether it was chosen by the user. */
export function useExaggeration(): { readonly factor: number; readonly automatic: boolean } {
  const length = useModel(({ body }) => Math.max(...boxOf(body.outline)));
  const limit = useModel(({ limits }) => limits.bow);
  const caseName = useView((view) => view.caseName);
  const chosen = useView((view) => view.exaggeration);
  const largest = useRun(({ solved }) => {
    if (!solved) return 0;
    return shownCase(solved.result, caseName).deviation.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  });
  return { factor: chosen ?? automaticExaggeration(length, limit, largest), automatic: chosen === null };
}
