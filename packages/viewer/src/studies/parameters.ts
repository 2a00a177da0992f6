import { type HeadModel, materialPresets } from '@flathead/solver';
import { valueAt } from '../state/set-value.ts';

/** A number of the head that a study may vary. */
export interface StudyParameter {
  /** As the plan names it. */
  readonly path: string;
  readonly label: string;
  readonly unit: string;
  /** Shown value over that of the model. */
  readonly scale: number;
  /** In the model. */
  readonly value: number;
}

/** Numbers of a head that are worth varying, those that it has. */
export function studyParameters(model: HeadModel): readonly StudyParameter[] {
  const { body, frame, sites, fasteners } = model;
  const ribs = frame?.ribs ?? [];
  const young = youngOf(model);
  const candidates: readonly (readonly [string, string, string, number, unknown])[] = [
    ['body.thickness', 'Body thickness', 'mm', 1, body.thickness],
    ['frame.thickness', 'Frame thickness', 'mm', 1, frame?.thickness],
    ['frame.ribs[*].width', 'Rib width', 'mm', 1, ribs[0]?.width],
    ['frame.window.rectangle[0]', 'Frame opening, x', 'mm', 1, valueAt(model, 'frame.window.rectangle.0')],
    ['frame.window.rectangle[1]', 'Frame opening, y', 'mm', 1, valueAt(model, 'frame.window.rectangle.1')],
    ['sites.probes.preload', 'Probe preload', 'N', 1, sites.probes.preload],
    ['sites.probes.touchdown', 'Touchdown force', 'N', 1, sites.probes.touchdown],
    ...(young === null ? [] : [[`materials[${young.material}].E`, 'E of the body', 'GPa', 1e-3, young.value] as const]),
    ...fasteners.flatMap(({ name, at }) =>
      ([0, 1] as const).map(
        (axis) => [`fasteners[${name}].at[${axis}]`, `${name}, ${'xy'[axis]}`, 'mm', 1, at[axis]] as const,
      ),
    ),
  ];
  return candidates.flatMap(([path, label, unit, scale, value]) =>
    typeof value === 'number' ? [{ path, label, unit, scale, value }] : [],
  );
}

/** Young's modulus of the body, MPa; null where its material is not one of a name. */
export function youngOf({ body, materials }: HeadModel): { readonly material: string; readonly value: number } | null {
  const { material } = body;
  if (typeof material !== 'string') return null;
  const value = valueAt(materials?.[material] ?? materialPresets[material], 'E');
  return typeof value === 'number' ? { material, value } : null;
}
