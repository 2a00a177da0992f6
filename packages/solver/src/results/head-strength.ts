import type { CompiledHead } from '../model/compile.ts';
import type { HeadModel } from '../model/head-model.ts';
import type { PlateProblem } from '../plate/plate-problem.ts';
import { freeFaces, type StressLayer } from '../section/stress-layers.ts';
import { temperatureOf } from '../structure/sections.ts';
import type { PlateSolution } from '../structure/solution.ts';
import type { Structure } from '../structure/structure.ts';
import { type BearingFace, bearingFaces } from './bearing-stress.ts';
import { cornerGroups } from './corner-groups.ts';
import { faceStresses, type PlateStrain } from './face-stress.ts';
import type { CaseStrength } from './head-result.ts';
import { nodalCurvatures, nodalStretches } from './nodal-strain.ts';
import { partStrength } from './part-strength.ts';
import { firstPrincipal } from './plane-stress.ts';
import { type StrengthSetting, strengthSettings } from './strength-setting.ts';
import { tension } from './stress-measure.ts';

/**
 * Largest stress, strength factor and failure probability of body and frame in each load case.
 *
 * Outside of the bearings stress is that of the plate on either face of each layer, in a drilled layer at the edge of a
 * hole. What reaches into the equivalent disc of a bearing is left out; the stress in the middle of the bearing stands
 * for it.
 *
 * @param structure that the cases were solved on
 */
export function headStrength(
  model: HeadModel,
  head: CompiledHead,
  structure: Structure,
  cases: readonly { readonly problem: PlateProblem; readonly solution: PlateSolution }[],
): CaseStrength[] {
  const { mesh, section, inPlane, rigidities, theory } = structure;
  const sectioned = { ...mesh, region: section };
  const groups = cornerGroups(sectioned);
  const settings = strengthSettings(model, head, cases[0].problem, structure, groups);
  const fields = cases.map(({ solution }) => solution.u);
  const curvatures = nodalCurvatures(sectioned, rigidities, theory, fields, groups);
  const stretches = inPlane === null ? null : nodalStretches(sectioned, inPlane, fields, groups);
  return cases.map(({ problem, solution: { reactions } }, k) => {
    const strain: PlateStrain = { curvature: curvatures[k], stretch: stretches?.[k] ?? null };
    const temperature = temperatureOf(problem);
    const free = (layer: StressLayer) => freeFaces(layer, temperature, inPlane !== null);
    const judged = settings.map((setting) => {
      const { surface, bearings } = setting;
      const stress = faceStresses(surface, strain, free);
      const pressed = bearings.map((bearing) =>
        bearingFaces(surface, bearing, rigidities, stress, reactions[bearing.fastener]),
      );
      return { setting, stress, pressed };
    });
    return {
      parts: judged.map(({ setting, stress, pressed }) => partStrength(setting, stress, pressed, head)),
      bodyTension: tensionField(settings[0], judged[0].stress, judged[0].pressed),
    };
  });
}

/** `[nNodes]` largest tension on either face of a part, MPa; at least 0. */
function tensionField(
  { surface: { mesh, places }, discs }: StrengthSetting,
  stress: Float64Array,
  pressed: readonly (readonly BearingFace[])[],
): Float64Array {
  const field = new Float64Array(mesh.x.length);
  const under = pressed.map((faces) => Math.max(...faces.map((face) => firstPrincipal(face.stress))));
  for (let p = 0; p < 2 * places.corner.length; p++) {
    const node = mesh.triangles[places.corner[p >> 1]];
    const value = discs[node] >= 0 ? under[discs[node]] : tension(stress, 3 * p, places.layer[p >> 1].holes);
    field[node] = Math.max(field[node], value);
  }
  return field;
}
