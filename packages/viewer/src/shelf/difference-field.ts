import { headParts } from '@flathead/solver';
import { type PlanWindow, planRaster, rasterDifference } from '../buffers/plan-raster.ts';
import { planWindow } from '../buffers/plan-window.ts';
import type { HeadInCase } from '../charts/plan-field.ts';
import { shownCase } from '../state/shown-case.ts';

/** Points across the head at which two heads are compared. */
const COLUMNS = 160;
const CHORD = 0.1;

/** The piece of the plan that holds every one of some heads. */
export function windowOf(heads: readonly Pick<HeadInCase, 'model' | 'result'>[]): PlanWindow {
  return planWindow(
    heads.flatMap(({ model, result }) => headParts(model, result.sites, CHORD).plate),
    1,
  );
}

/** Largest magnitude of the difference of deviation of two heads, mm. */
export function largestDifference(head: HeadInCase, less: HeadInCase): number {
  const window = windowOf([head]);
  const rows = Math.max(1, Math.round((COLUMNS * window.height) / window.width));
  const raster = ({ result, caseName }: HeadInCase) =>
    planRaster(result.mesh, shownCase(result, caseName).deviation, window, COLUMNS, rows);
  const { values } = rasterDifference(raster(head), raster(less));
  return values.reduce((most, value) => (Number.isNaN(value) ? most : Math.max(most, Math.abs(value))), 1e-9);
}
