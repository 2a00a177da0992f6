import type { PlateProblem } from '../../src/plate/plate-problem.ts';
import { cornerGroups } from '../../src/results/corner-groups.ts';
import { faceStresses } from '../../src/results/face-stress.ts';
import { nodalCurvatures, nodalStretches } from '../../src/results/nodal-strain.ts';
import { stressPart } from '../../src/results/stress-part.ts';
import { freeFaces, stressLayers } from '../../src/section/stress-layers.ts';
import { sectionsOf, temperatureOf } from '../../src/structure/sections.ts';
import { advance } from '../../src/structure/stages.ts';

/** A plate solved, all of its layers taken as one part, with the stress on its faces. */
export function solvedStress(problem: PlateProblem) {
  const { structure, cases } = advance(null, { problems: [problem], areas: [], coarsening: 1, keepMesh: false });
  const { mesh, section, inPlane, rigidities, membranes, theory } = structure;
  const temperature = temperatureOf(problem);
  const layers = sectionsOf(problem).map((own, i) => stressLayers(own, rigidities[i], membranes?.[i])!);
  const sectioned = { ...mesh, region: section };
  const part = stressPart({ mesh, section, layers }, cornerGroups(sectioned));
  const [curvature] = nodalCurvatures(sectioned, rigidities, theory, [cases[0].u]);
  const stretch = inPlane === null ? null : nodalStretches(sectioned, inPlane, [cases[0].u])[0];
  const stress = faceStresses(part, { curvature, stretch }, (layer) => freeFaces(layer, temperature, inPlane !== null));
  return { structure, reactions: cases[0].reactions, part, stress };
}

type Solved = Pick<ReturnType<typeof solvedStress>, 'part' | 'stress'>;

/** sxx, syy, sxy on a face of a layer at the node nearest to a point. */
export function stressNear({ part, stress }: Solved, [px, py]: [number, number], layer: number, face: 0 | 1) {
  const { mesh, placeAt } = part;
  let [least, best] = [Infinity, 0];
  mesh.triangles.forEach((node, corner) => {
    const far = Math.hypot(mesh.x[node] - px, mesh.y[node] - py);
    if (far < least && placeAt[corner] >= 0) [least, best] = [far, corner];
  });
  const at = 6 * (placeAt[best] + layer) + 3 * face;
  return { sxx: stress[at], syy: stress[at + 1], sxy: stress[at + 2] };
}
