import { pointRow } from '../assembly/rows.ts';
import type { Point } from '../geometry/point.ts';
import type { SparseRow } from '../linear-algebra/block-matrix.ts';
import { scaleRow, sparseRow } from '../linear-algebra/sparse-row.ts';
import type { SolvedCase } from '../structure/groups.ts';
import { bestFitPlane } from './best-fit-plane.ts';
import type { CaseResult, CriterionVerdict } from './head-result.ts';
import type { Goal } from './refine-for.ts';
import type { SampleArea } from './sample-areas.ts';

/** Share of the tolerance aimed at, and the least share of an error aimed at in one round. */
const [AIM, LEAST_RATIO] = [0.7, 0.15];
/** Sites that one round refines for, at most. */
const MOST_SITES = 6;

/** Criteria whose numerical error is above the tolerance, a share of the limit; bow and flatness only. */
export function unsettled(criteria: readonly CriterionVerdict[], tolerance: number): CriterionVerdict[] {
  return criteria.filter(
    ({ criterion, error, limit }) =>
      (criterion === 'bow' || criterion === 'flatness') && (error ?? 0) > tolerance * limit,
  );
}

/**
 * What the mesh of a head is to be refined for: the deviation of the sites that bow most from the fastener plane, and
 * the height of the site area's peak over its valley.
 */
export function headGoals(
  solved: readonly SolvedCase[],
  cases: readonly CaseResult[],
  areas: readonly SampleArea[],
  criteria: readonly CriterionVerdict[],
  tolerance: number,
): Goal[] {
  return criteria.flatMap((verdict) => {
    const { criterion, value, limit } = verdict;
    const error = verdict.error ?? 0;
    const load = cases.findIndex(({ name }) => name === verdict.case);
    const result = cases[load];
    const ratio = Math.max(LEAST_RATIO, (AIM * tolerance * limit) / error);
    const goal = (row: SparseRow): Goal => ({ load, row, ratio });
    if (criterion === 'flatness') return [goal(peakOverValley(solved[load], result, areas))];
    return result.sites
      .filter(({ bow }) => Math.abs(bow) >= value - 2 * error)
      .sort((a, b) => Math.abs(b.bow) - Math.abs(a.bow))
      .slice(0, MOST_SITES)
      .map(({ at }) => goal(deviation(solved[load], result, at)));
  });
}

/** Deviation from the fastener plane at a point: `w - sum_i p_i(x, y) w_i`, p_i the plane of a unit move of seat i. */
function deviation({ structure, supports }: SolvedCase, { fasteners }: CaseResult, at: Point): SparseRow {
  const solves = [...supports.values()];
  const holding = fasteners.map(({ holds }, i) => (holds ? i : -1)).filter((i) => i >= 0);
  const seats = holding.map((i, k) => {
    const unit = Float64Array.from(holding.flatMap((j, l) => [...fasteners[j].at, k === l ? 1 : 0]));
    const { a, bx, by } = bestFitPlane(unit);
    return scaleRow(-(a + bx * at[0] + by * at[1]), solves[i].support.row);
  });
  return sum([pointRow(structure.mesh, structure.locator, at, 'sites'), ...seats]);
}

/** Height of the highest over the lowest node of the site area, both about its least-squares plane. */
function peakOverValley({ structure }: SolvedCase, { w }: CaseResult, areas: readonly SampleArea[]): SparseRow {
  const { x, y } = structure.mesh;
  const nodes = Uint32Array.from(areas.flatMap((area) => [...area.nodes]));
  const points = (z: (node: number) => number) => Float64Array.from([...nodes].flatMap((i) => [x[i], y[i], z(i)]));
  const { a, bx, by } = bestFitPlane(points((i) => w[i]));
  const height = (i: number) => w[i] - a - bx * x[i] - by * y[i];
  const [peak, valley] = nodes.reduce(
    ([high, low], i) => [height(i) > height(high) ? i : high, height(i) < height(low) ? i : low],
    [nodes[0], nodes[0]],
  );
  // Slopes of the plane are linear in w: those of the planes through x and y as heights invert their moments.
  const mean = (v: Float64Array) => nodes.reduce((total, i) => total + v[i], 0) / nodes.length;
  const [xm, ym] = [mean(x), mean(y)];
  let [xx, xy, yy] = [0, 0, 0];
  for (const i of nodes) {
    xx += (x[i] - xm) ** 2;
    xy += (x[i] - xm) * (y[i] - ym);
    yy += (y[i] - ym) ** 2;
  }
  const [dx, dy, determinant] = [x[peak] - x[valley], y[peak] - y[valley], xx * yy - xy * xy];
  const [px, py] = [(yy * dx - xy * dy) / determinant, (xx * dy - xy * dx) / determinant];
  const tilt = Float64Array.from(nodes, (i) => -(px * (x[i] - xm) + py * (y[i] - ym)));
  return sum([
    { dof: Uint32Array.of(3 * peak), value: Float64Array.of(1) },
    { dof: Uint32Array.of(3 * valley), value: Float64Array.of(-1) },
    { dof: nodes.map((i) => 3 * i), value: tilt },
  ]);
}

function sum(rows: readonly SparseRow[]): SparseRow {
  return sparseRow(
    rows.flatMap(({ dof }) => [...dof]),
    rows.flatMap(({ value }) => [...value]),
  );
}
