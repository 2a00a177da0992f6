import { difference } from '../../geometry/boolean.ts';
import type { Point, Ring } from '../../geometry/point.ts';
import type { PlateProblem } from '../../plate/plate-problem.ts';
import { massOver } from '../../structure/flexibility.ts';
import { loadingOf } from '../../structure/loading.ts';
import { meshPlate } from '../../structure/meshed.ts';
import { isCoupled } from '../../structure/sections.ts';
import { stopwatch } from '../../structure/stopwatch.ts';
import { buildStructure } from '../../structure/structure.ts';
import { bestPlacements } from './best-placements.ts';
import type { Field } from './field.ts';
import type { Mirror } from './plan.ts';
import { rmsForm } from './rms-form.ts';
import { plateRoom } from './room.ts';
import { groundOf } from './stand.ts';
import type { TaskResult } from './task.ts';

/** What a search for the supports of a plate may move. */
export interface PlatePlacementPlan {
  /** Supports to place. Those of the problem stay. */
  readonly count: number;
  readonly mirror?: Mirror;
  readonly about?: Point;
  /** Bearing diameter, mm; 0 = a point. */
  readonly diameter?: number;
  /** N/mm; rigid if left out. */
  readonly stiffness?: number;
  /** Least distance from edges, mm. */
  readonly edge?: number;
  readonly spacing?: number;
  readonly step?: number;
  readonly continuous?: boolean;
  readonly seed?: number;
  readonly starts?: number;
  readonly most?: number;
}

/**
 * Supports of a plate placed so that the root mean square of its deflection about the mean, over `report.over` or the
 * whole plate, is least.
 *
 * @throws Fault with the path in the problem
 */
export function placePlateSupports(problem: PlateProblem, plan: PlatePlacementPlan): TaskResult {
  const tasks = [{ clearance: 0, groups: [{ count: plan.count, mirror: plan.mirror ?? 'none' }] as const }];
  const { about = [0, 0], step = null, spacing = 0, seed = 1, starts = 12, most = 300_000 } = plan;
  const continuous = plan.continuous ?? step === null;
  const settings = { about, step, spacing, seed, starts, most, continuous };
  let result: TaskResult | null = null;
  for (const said of bestPlacements(plateField(problem, plan), tasks, settings))
    if (said.kind === 'result') result = said.result;
  return result!;
}

/** A plate as a field to search in; its own supports stay. */
function plateField(problem: PlateProblem, plan: PlatePlacementPlan): Field {
  const clock = stopwatch();
  const over = problem.report?.over;
  const meshed = meshPlate({ ...problem, supports: [] }, [], 1, clock, isCoupled(problem));
  const structure = buildStructure(problem, meshed, clock);
  const loading = loadingOf(structure, problem, new Map());
  const ring: Ring | 'all' = over === undefined ? 'all' : meshed.ring(over, 'report.over');
  const form = rmsForm(massOver(structure, ring, 'report.over'));
  const outline = meshed.ring(problem.outline, 'outline');
  const openings = (problem.openings ?? []).map((shape, i) => meshed.ring(shape, `openings.${i}`));
  const { diameter = 0, stiffness = null } = plan;
  return {
    grounds: [groundOf('', structure, null, [{ name: problem.name ?? 'plate', load: null, loading }])],
    goal: { objective: 'rms', bow: 0, flatness: 0, limits: {}, probes: null },
    room: plateRoom(openings.length === 0 ? [outline] : difference([outline], openings), plan.edge ?? 0),
    always: (problem.supports ?? []).map((support) => ({ at: support.at, support, joint: null })),
    fixed: (problem.supports ?? []).length,
    placeAt: (at) => ({ at, support: { at: [at[0], at[1]], diameter, stiffness }, joint: null }),
    touching: diameter,
    form,
  };
}
