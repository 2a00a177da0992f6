import type { CaseResult, HeadModel, HeadResult } from '@flathead/solver';
import { isoStep } from '../buffers/iso-levels.ts';
import { type PlanColours, planImage } from '../buffers/plan-image.ts';
import { type PlanWindow, planRaster, rasterDifference, withRim } from '../buffers/plan-raster.ts';
import { shownCase } from '../state/shown-case.ts';
import { tensionScale } from '../state/shown-tension.ts';

/** A solved head and the case of it that is looked at. */
export interface HeadInCase {
  readonly model: HeadModel;
  readonly result: HeadResult;
  /** `null` = the worst. */
  readonly caseName: string | null;
}

/** What a map shows and how it is coloured. */
export interface PlanScale extends Pick<PlanColours, 'kind' | 'top' | 'isoStep' | 'everywhere'> {
  /** Whether the top of the ramp is a limit. */
  readonly limited: boolean;
}

export type PlanQuantity = 'deviation' | 'tension';

/** Colours of one head: deviation against its limit, or tension against what is allowed of the body. */
export function planScale({ model, result, caseName }: HeadInCase, quantity: PlanQuantity): PlanScale {
  if (quantity === 'deviation') {
    const top = model.limits.bow;
    return { kind: 'limit', top, isoStep: isoStep(top), everywhere: false, limited: true };
  }
  const { strength } = shownCase(result, caseName);
  const { top, limited } = tensionScale(model, strength === null ? null : { ...strength, stale: false });
  return { kind: 'limit', top: limited ? top : top * (1 + 1e-6), isoStep: isoStep(top), everywhere: true, limited };
}

/** Colours of a difference: both ends at its largest magnitude over the nodes of the first head, or where asked. */
export function differenceScale(top: number): PlanScale {
  return { kind: 'signed', top, isoStep: isoStep(top), everywhere: true, limited: false };
}

/**
 * Pixels of a head in plan.
 *
 * @param less another head whose field is taken off
 * @param pixelRatio pixels of the picture for one of the page
 */
export function planPixels(
  head: HeadInCase,
  less: HeadInCase | null,
  quantity: PlanQuantity,
  window: PlanWindow,
  { columns, rows }: { readonly columns: number; readonly rows: number },
  paint: PlanScale & Pick<PlanColours, 'base' | 'pixelRatio'>,
): Uint8ClampedArray<ArrayBuffer> {
  const raster = (of: HeadInCase) =>
    planRaster(of.result.mesh, nodal(shownCase(of.result, of.caseName), quantity), window, columns, rows);
  const field = less === null ? raster(head) : rasterDifference(raster(head), raster(less));
  return planImage(withRim(field), window, head.result.sites, paint);
}

/** Nothing where a live answer has no stress. */
function nodal({ deviation, strength }: CaseResult, quantity: PlanQuantity): Float64Array {
  return quantity === 'deviation' ? deviation : (strength?.bodyTension ?? new Float64Array(deviation.length));
}
