import type { SolvedCase } from '../structure/groups.ts';
import { areaPoints } from './area-points.ts';
import { bestFitPlane } from './best-fit-plane.ts';
import { deflectionReader } from './deflection-reader.ts';
import { deviationsAbout } from './flatness.ts';
import type { CaseResult } from './head-result.ts';
import type { SampleArea } from './sample-areas.ts';

/**
 * Bow and flatness of the difference between the deflections on two meshes, mm. By the triangle inequality those of the
 * two fields differ by no more; they may differ by less, even by nothing, where errors of opposite sign meet.
 */
export interface FieldGap {
  readonly bow: number;
  /** About the least-squares plane, at least that of the minimum zone. */
  readonly flatness: number;
}

/** One case as solved and as measured. */
interface Measured {
  readonly solved: SolvedCase;
  readonly result: Pick<CaseResult, 'fastenerPlane'>;
}

/**
 * Read at the nodes of the finer mesh and the middles of its sides.
 *
 * @param areas of the mesh of `fine`
 */
export function fieldGap(areas: readonly SampleArea[], fine: Measured, coarse: Measured): FieldGap {
  const { structure, solution } = fine.solved;
  const coarser = deflectionReader(coarse.solved.structure.locator, coarse.solved.solution.u);
  const [a, bx, by] = fine.result.fastenerPlane.map((value, i) => value - coarse.result.fastenerPlane[i]);
  const points = areaPoints(structure.mesh, solution.u, areas);
  let bow = 0;
  for (let i = 0; i < points.length; i += 3) {
    const [x, y] = [points[i], points[i + 1]];
    // Off the coarser mesh at an arc: as far apart as the planes.
    const w = coarser(x, y);
    points[i + 2] = Number.isNaN(w) ? a + bx * x + by * y : points[i + 2] - w;
    bow = Math.max(bow, Math.abs(points[i + 2] - a - bx * x - by * y));
  }
  const { peak, valley } = deviationsAbout(bestFitPlane(points), points);
  return { bow, flatness: peak + valley };
}
