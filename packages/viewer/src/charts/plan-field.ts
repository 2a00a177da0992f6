import type { CaseResult, HeadModel, HeadResult } from '@flathead/solver';
import { type ColourScale, limitScale, plainScale } from '../buffers/colour-scale.ts';
import { isoStep } from '../buffers/iso-levels.ts';
import { type PlanColours, planImage } from '../buffers/plan-image.ts';
import { type PlanWindow, planRaster, rasterDifference, withRim } from '../buffers/plan-raster.ts';
import { largestBow } from '../state/largest-bow.ts';
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
export interface PlanScale extends Pick<PlanColours, 'kind' | 'isoStep' | 'everywhere'>, ColourScale {}

export type PlanQuantity = 'deviation' | 'tension';

/**
 * Colours of one head: deviation against its limit, or tension against what is allowed of the body.
 *
 * @param atLeast largest bow that the colours are to hold, mm: of all heads that are to be compared by them
 */
export function planScale({ model, result, caseName }: HeadInCase, quantity: PlanQuantity, atLeast = 0): PlanScale {
  if (quantity === 'deviation') {
    const { bow } = model.limits;
    const scale = limitScale(bow, Math.max(atLeast, largestBow(result)));
    return { kind: 'magnitude', ...scale, isoStep: isoStep(bow), everywhere: false };
  }
  const scale = tensionScale(model, { bodyTension: nodal(shownCase(result, caseName), 'tension') });
  return { kind: 'magnitude', ...scale, isoStep: isoStep(scale.limit ?? scale.top), everywhere: true };
}

/** Colours of a difference: both ends at its largest magnitude over the nodes of the first head, or where asked. */
export function differenceScale(top: number): PlanScale {
  return { kind: 'signed', ...plainScale(top), isoStep: isoStep(top), everywhere: true };
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
