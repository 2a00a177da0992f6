import { headParts } from '@flathead/solver';
import { planRaster, rasterDifference } from '../buffers/plan-raster.ts';
import { planWindow } from '../buffers/plan-window.ts';
import type { HeadInCase } from '../charts/plan-field.ts';
import { shownCase } from '../state/shown-case.ts';

/** Points across the head at which two heads are compared. */
const COLUMNS = 160;
const CHORD = 0.1;

/** Width of a head in plan, mm. */
export function planWidth({ model, result }: HeadInCase): number {
  return planWindow(headParts(model, result.sites, CHORD).plate, 1).width;
}

/** Largest magnitude of the difference of deviation of two heads, mm. */
export function largestDifference(head: HeadInCase, less: HeadInCase): number {
  const window = planWindow(headParts(head.model, head.result.sites, CHORD).plate, 1);
  const rows = Math.max(1, Math.round((COLUMNS * window.height) / window.width));
  const raster = ({ result, caseName }: HeadInCase) =>
    planRaster(result.mesh, shownCase(result, caseName).deviation, window, COLUMNS, rows);
  const { values } = rasterDifference(raster(head), raster(less));
  return values.reduce((most, value) => (Number.isNaN(value) ? most : Math.max(most, Math.abs(value))), 1e-9);
}
