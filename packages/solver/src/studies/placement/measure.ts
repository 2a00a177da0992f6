import { areaPoints } from '../../results/area-points.ts';
import { bestFitPlane, type Plane } from '../../results/best-fit-plane.ts';
import { extremeDeviations } from '../../results/bow.ts';
import { siteContact } from '../../results/contact.ts';
import { leastForce } from '../../results/criteria/contact.ts';
import { readingsOf } from '../../results/criteria/fasteners.ts';
import { jointUnder } from '../../results/joint.ts';
import { minimumZone } from '../../results/minimum-zone.ts';
import type { Goal } from './goal.ts';
import type { CaseForces, Reactor } from './reactions.ts';
import type { Stand } from './stand.ts';

/** One load case of one placement, measured in full as the solver measures a head. */
export interface Measured {
  readonly bow: number;
  readonly flatness: number;
  /** Most used share of the limits on fasteners and contact. */
  readonly used: number;
  /** `[3 * nPoints]` x, y, w of the points that flatness is read at. */
  readonly points: Float64Array;
  readonly plane: Plane;
}

/** Measures load cases of placements on one stand. */
export interface Gauge {
  /** Fastener plane as the seats moved: fixed and placed fasteners that hold. */
  plane(reactor: Reactor, forces: CaseForces): Plane;
  /** @param withFlatness left out otherwise, as it takes longest */
  measure(reactor: Reactor, index: number, withFlatness: boolean): Measured;
}

const LEVEL: Plane = { a: 0, bx: 0, by: 0 };

/** @param most supports that a placement may have */
export function gaugeOf(stand: Stand, goal: Goal, most: number): Gauge {
  const { ground, columns, fixed, always } = stand;
  const { mesh } = ground.structure;
  const u = new Float64Array(3 * mesh.x.length);
  const sum = new Float64Array(3 * ground.nodes.length);
  const seats = new Float64Array(3 * (fixed + most));
  const triangles = Uint32Array.from(ground.areas.flatMap((area) => [...area.triangles]));
  const soft = columns.map(({ solve: { support } }) => (support.stiffness === null ? 0 : 1 / support.stiffness));
  return { plane, measure };

  function plane({ active, count }: Reactor, { force, letGo }: CaseForces): Plane {
    let n = 0;
    let isLevel = true;
    for (let i = 0; i < count; i++) {
      if ((i >= fixed && i < always) || letGo?.has(i)) continue;
      const c = active[i];
      const w = -force[i] * soft[c];
      if (w !== 0) isLevel = false;
      const { at } = columns[c].place;
      seats[n++] = at[0];
      seats[n++] = at[1];
      seats[n++] = w;
    }
    return isLevel ? LEVEL : bestFitPlane(seats.subarray(0, n));
  }

  function measure(reactor: Reactor, index: number, withFlatness: boolean): Measured {
    const forces = reactor.cases[index];
    fill(reactor, index);
    const level = plane(reactor, forces);
    const { min, max } = extremeDeviations(mesh, u, level, triangles);
    const points = areaPoints(mesh, u, ground.areas);
    return {
      bow: Math.max(-min.value, max.value),
      flatness: withFlatness ? minimumZone(points) : 0,
      used: Math.max(fastenersUse(reactor, forces), contactUse(index, level)),
      points,
      plane: level,
    };
  }

  /** Deflection of case `index` at the measured nodes. */
  function fill({ active, count, cases }: Reactor, index: number): void {
    const { force, motion } = cases[index];
    sum.set(ground.cases[index].at);
    for (let i = 0; i < count; i++) add(columns[active[i]].at, force[i]);
    for (let k = 0; k < motion.length; k++) add(ground.motions[k], motion[k]);
    for (let i = 0; i < ground.nodes.length; i++) {
      const to = 3 * ground.nodes[i];
      u[to] = sum[3 * i];
      u[to + 1] = sum[3 * i + 1];
      u[to + 2] = sum[3 * i + 2];
    }
  }

  function add(field: Float64Array, share: number): void {
    if (share === 0) return;
    for (let i = 0; i < sum.length; i++) sum[i] += share * field[i];
  }

  function fastenersUse({ active, count }: Reactor, { force }: CaseForces): number {
    const { fastener: limit } = goal.limits;
    if (limit === undefined) return 0;
    let most = 0;
    for (let i = 0; i < count; i++) {
      const { joint } = columns[active[i]].place;
      if (joint === null) continue;
      for (const { value } of readingsOf({ name: '', joint: jointUnder(joint, force[i]) }))
        most = Math.max(most, value / limit);
    }
    return most;
  }

  function contactUse(index: number, fastenerPlane: Plane): number {
    const { limits, probes } = goal;
    const { load } = ground.cases[index];
    if (limits.contactForce === undefined || probes === null || load === null) return 0;
    let most = 0;
    for (const area of ground.areas) {
      const field = { mesh, u, triangles: area.triangles, fastenerPlane };
      const contact = siteContact(probes, load.touched.has(area.name), field);
      const least = contact === null ? null : leastForce({ contact });
      if (least !== null) most = Math.max(most, Math.min(limits.contactForce / least, 1e6));
    }
    return most;
  }
}
