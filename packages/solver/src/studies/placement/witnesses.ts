import type { Plane } from '../../results/best-fit-plane.ts';
import type { Goal } from './goal.ts';
import type { Measured } from './measure.ts';
import type { CaseForces, Reactor } from './reactions.ts';
import type { Stand } from './stand.ts';
import { zoneCut } from './zone-cut.ts';

/**
 * A quantity of one load case that is linear in its forces and is never above the value of the placement: the deviation
 * of one point from the fastener plane, or the height of a cut through the minimum zone.
 */
interface Witness {
  /** `[nColumns]` what a unit force at each place adds. */
  readonly row: Float64Array;
  readonly load: number;
  readonly motion: Float64Array;
  /** Value for each mm. */
  readonly scale: number;
  /** Of a point, where the fastener plane is taken off; a plane takes nothing from a cut. */
  readonly hasPlane: boolean;
  readonly x: number;
  readonly y: number;
  readonly key: string;
}

/** Witnesses kept for each load case; the ones that reject least go first. */
const MOST = 160;
/** Against the cosine of a tilt of thousandths, by which the minimum zone may be below its height. */
const TILTED = 1 - 2e-5;

/** Lower bounds for one stand, which learn from every placement that is measured in full. */
export interface Witnesses {
  /**
   * A lower bound of the value of the placement solved last in one load case: one that reaches `below` where a witness
   * does, else the largest.
   */
  bound(reactor: Reactor, index: number, plane: Plane, below: number): number;
  learn(index: number, measured: Measured): void;
}

export function witnessesOf({ ground, columns }: Stand, goal: Goal): Witnesses {
  const { mesh } = ground.structure;
  const rank = new Map<number, number>();
  for (const [k, node] of ground.nodes.entries()) rank.set(node, k);
  const known = ground.cases.map((): Witness[] => []);
  return {
    bound(reactor, index, plane, below) {
      const list = known[index];
      const forces = reactor.cases[index];
      let most = 0;
      for (let i = 0; i < list.length; i++) {
        const value = heightOf(list[i], reactor, forces, plane);
        if (value > most) most = value;
        if (value < below) continue;
        // One step forward for each rejection: the list sorts itself.
        if (i > 0) [list[i - 1], list[i]] = [list[i], list[i - 1]];
        return value;
      }
      return most;
    },
    learn(index, { points, plane, flatness }) {
      if (goal.bow > 0) {
        const p = farthest(points, plane);
        add(index, [p], [1], goal.bow, [points[3 * p], points[3 * p + 1]]);
      }
      if (goal.flatness > 0 && flatness > 0) {
        const cut = zoneCut(points);
        if (cut !== null) add(index, cut.points, cut.share, goal.flatness * TILTED, null);
      }
    },
  };

  function add(
    index: number,
    points: readonly number[],
    share: readonly number[],
    scale: number,
    at: readonly [number, number] | null,
  ): void {
    const key = `${scale} ${points.map((p, k) => [p, share[k]].join(':')).sort()}`;
    const list = known[index];
    if (list.some((witness) => witness.key === key)) return;
    const weights = points.flatMap((p, k) => pointWeights(p).map(([dof, value]) => [dof, share[k] * value] as const));
    const of = (field: Float64Array) => weights.reduce((sum, [dof, value]) => sum + value * field[dof], 0);
    if (list.length === MOST) list.pop();
    list.unshift({
      row: Float64Array.from(columns, ({ at }) => of(at)),
      load: of(ground.cases[index].at),
      motion: Float64Array.from(ground.motions, of),
      scale,
      hasPlane: at !== null,
      x: at?.[0] ?? 0,
      y: at?.[1] ?? 0,
      key,
    });
  }

  /** A point of `areaPoints` as weights on the values at the measured nodes. */
  function pointWeights(p: number): (readonly [dof: number, value: number])[] {
    let left = p;
    for (const { nodes, sides } of ground.areas) {
      if (left < nodes.length) return [[3 * rank.get(nodes[left])!, 1]];
      left -= nodes.length;
      if (left < sides.length / 2) {
        const [i, j] = [sides[2 * left], sides[2 * left + 1]];
        const [a, b] = [3 * rank.get(i)!, 3 * rank.get(j)!];
        const [dx, dy] = [(mesh.x[j] - mesh.x[i]) / 8, (mesh.y[j] - mesh.y[i]) / 8];
        return [
          [a, 0.5],
          [b, 0.5],
          [b + 2, dx],
          [a + 2, -dx],
          [b + 1, -dy],
          [a + 1, dy],
        ];
      }
      left -= sides.length / 2;
    }
    return [];
  }
}

function heightOf(
  { row, load, motion, scale, hasPlane, x, y }: Witness,
  { active, count }: Reactor,
  { force, motion: amplitude }: CaseForces,
  plane: Plane,
): number {
  let sum = load;
  for (let i = 0; i < count; i++) sum += row[active[i]] * force[i];
  for (let k = 0; k < motion.length; k++) sum += motion[k] * amplitude[k];
  if (hasPlane) sum -= plane.a + plane.bx * x + plane.by * y;
  return scale * Math.abs(sum);
}

function farthest(points: Float64Array, { a, bx, by }: Plane): number {
  let [index, most] = [0, -1];
  for (let i = 0; 3 * i < points.length; i++) {
    const away = Math.abs(points[3 * i + 2] - a - bx * points[3 * i] - by * points[3 * i + 1]);
    if (away > most) [index, most] = [i, away];
  }
  return index;
}
