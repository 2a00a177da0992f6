import type { PlateProblem } from '../../src/plate/plate-problem.ts';
import { cornerGroups } from '../../src/results/corner-groups.ts';
import { faceStresses } from '../../src/results/face-stress.ts';
import { nodalCurvatures } from '../../src/results/nodal-curvature.ts';
import { stressPart } from '../../src/results/stress-part.ts';
import { stressLayers } from '../../src/section/stress-layers.ts';
import { freeCurvatures, sectionsOf } from '../../src/structure/sections.ts';
import { advance } from '../../src/structure/stages.ts';

/** A plate solved, all of its layers taken as one part, with the stress on its faces. */
export function solvedStress(problem: PlateProblem) {
  const { structure, cases } = advance(null, { problems: [problem], areas: [], coarsening: 1, keepMesh: false });
  const { mesh, section, rigidities, theory } = structure;
  const free = freeCurvatures(problem);
  const layers = sectionsOf(problem).map((own, i) => stressLayers(own, rigidities[i], free?.[i])!);
  const sectioned = { ...mesh, region: section };
  const part = stressPart({ mesh, section, layers }, cornerGroups(sectioned));
  const [curvature] = nodalCurvatures(sectioned, rigidities, theory, [cases[0].u]);
  return { structure, reactions: cases[0].reactions, part, stress: faceStresses(part, { curvature, stretch: null }) };
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
