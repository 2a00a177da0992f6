import { type CaseResult, type CaseStrength, type HeadModel, materialPresets } from '@flathead/solver';
import { type ColourScale, limitScale, plainScale } from '../buffers/colour-scale.ts';
import type { RunState } from './run-store.ts';
import { shownCase } from './shown-case.ts';

export interface ShownTension extends CaseStrength {
  /** Of an answer before the one shown, on the same mesh. */
  readonly stale: boolean;
}

/**
 * Stresses of the case shown. A live answer has none, so those of the last full answer stay for as long as its mesh does.
 *
 * @returns `null` until there are some
 */
export function shownTension(
  { solved, full }: Pick<RunState, 'solved' | 'full'>,
  shown: CaseResult,
): ShownTension | null {
  if (shown.strength !== null) return { ...shown.strength, stale: false };
  if (solved === null || full === null || full.result.mesh !== solved.result.mesh) return null;
  const { strength } = shownCase(full.result, shown.name);
  return strength === null ? null : { ...strength, stale: true };
}

/**
 * Colours to the allowed tension and beyond where the model asks for a strength factor of a body that breaks by tension, and
 * knows the strength; else to the largest tension. MPa.
 */
export function tensionScale(model: HeadModel, tension: Pick<ShownTension, 'bodyTension'> | null): ColourScale {
  const { strengthFactor } = model.limits;
  const name = model.body.material;
  const preset = Object.hasOwn(materialPresets, name) ? materialPresets[name] : undefined;
  const { strength, kind = 'ceramic' } = model.materials?.[name] ?? preset ?? {};
  const largest = tension === null ? 0 : tension.bodyTension.reduce((most, value) => Math.max(most, value), 0);
  if (strengthFactor !== undefined && strength !== undefined && kind === 'ceramic')
    return limitScale(strength / strengthFactor, largest);
  return plainScale(Math.max(largest, 1e-3));
}
