import type { HeadModel } from '../model/head-model.ts';
import type { HeadResult } from '../results/head-result.ts';
import { caseOf } from './case-fields.ts';

export interface SurfaceOptions {
  /** The case with the largest bow if left out. */
  readonly case?: string | undefined;
  /** Times that the deflection is drawn larger; such that it is a tenth of the head's width if left out. */
  readonly exaggeration?: number | undefined;
}

/** The middle plane of a head as it bends, mm. */
export interface BentSurface {
  readonly case: string;
  readonly exaggeration: number;
  /** `[3 * nNodes]` x, y and exaggerated deviation from the fastener plane. */
  readonly position: Float64Array;
  /** `[3 * nTriangles]`, counter-clockwise from above. */
  readonly triangles: Uint32Array;
  /** `[nNodes]` mm, not exaggerated. */
  readonly deviation: Float64Array;
  /** Limit of the bow, mm. */
  readonly limit: number;
}

/** @throws Fault SCHEMA for an unknown case */
export function bentSurface(model: HeadModel, result: HeadResult, options: SurfaceOptions): BentSurface {
  const { mesh } = result;
  const { deviation, name } = caseOf(result, options.case);
  const [width, most] = [largest(mesh.x) + largest(mesh.x.map((x) => -x)), largest(deviation.map(Math.abs))];
  const exaggeration = options.exaggeration ?? (most > 0 ? rounded((0.1 * width) / most) : 1);
  const position = new Float64Array(3 * mesh.x.length);
  for (let i = 0; i < mesh.x.length; i++) position.set([mesh.x[i], mesh.y[i], exaggeration * deviation[i]], 3 * i);
  return { case: name, exaggeration, position, triangles: mesh.triangles, deviation, limit: model.limits.bow };
}

function largest(values: Float64Array): number {
  return values.reduce((most, value) => Math.max(most, value), -Infinity);
}

/** Down to one digit. */
function rounded(value: number): number {
  const digit = 10 ** Math.floor(Math.log10(value));
  return Math.max(1, Math.floor(value / digit) * digit);
}
