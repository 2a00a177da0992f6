import { Fault } from '../../fault/fault.ts';
import type { Point } from '../../geometry/point.ts';
import type { HeadModel } from '../../model/head-model.ts';
import { bestPlacements } from './best-placements.ts';
import { BROKEN } from './goal.ts';
import { type HeadField, headField } from './head-field.ts';
import { placedAs } from './names.ts';
import { checkPlacementPlan, type GroupPlan, type PlacementPlan } from './plan.ts';
import { searchRemarks } from './remarks.ts';
import type { CurvePoint, PlacementPoint, PlacementRow, PlacementSummary } from './rows.ts';
import type { Best, Settings, TaskResult } from './task.ts';
import { roomyField, throughRemarks } from './through.ts';
import { curveTasks } from './trade-curve.ts';
import { verified } from './verify.ts';

/**
 * The best positions for the fasteners of a head, under what the plan allows, and the trade curve that it asks for.
 *
 * Compliances of all candidate positions are found once by half-solves of one factor; a placement is then a small dense
 * system. The winner is solved in full like any other head. The same model and plan give the same rows.
 *
 * A caller may stop between rows; the last row of kind `better` or `point` holds the best so far.
 *
 * @param plan checked here
 * @throws Fault with the path in the model or in the plan
 */
export function* placementSteps(
  model: HeadModel,
  plan: PlacementPlan,
): Generator<PlacementRow, PlacementSummary, void> {
  checkPlacementPlan(plan);
  const asked = headField(model, plan);
  const settings = settingsOf(plan);
  const clearance = plan.clearance ?? 0;
  const groups = (count: number): GroupPlan[] =>
    plan.groups?.map((group) => ({ count: group.count, mirror: group.mirror ?? 'none' })) ?? [
      { count: count - asked.fixed, mirror: plan.mirror ?? 'none' },
    ];
  const count = plan.count ?? model.fasteners.length;
  requireSome(groups(count), count, asked.fixed);
  const field = plan.through === undefined ? roomyField(asked, settings, clearance, groups(count)) : asked;
  const tasks = curveTasks(field, plan, settings, clearance, count, groups);

  const steps = bestPlacements(field, tasks, settings);
  // Grid and memory are refused before the first row.
  let next = steps.next();
  let index = 0;
  yield { index: index++, kind: 'begin', total: tasks.length };
  const curve: CurvePoint[] = [];
  let main: TaskResult | null = null;
  for (; !next.done; next = steps.next()) {
    const step = next.value;
    if (step.kind === 'progress') yield { index: index++, ...step };
    else if (step.kind === 'better') {
      const placement = placedAs(model, field, step.points, plan);
      yield { index: index++, kind: 'better', task: step.task, value: step.value, placement };
    } else {
      const { over, at } = tasks[step.task];
      if (over === null) main = step.result;
      else {
        const point = curvePoint(over, at, step.result);
        curve.push(point);
        yield { index: index++, kind: 'point', task: step.task, ...point };
      }
    }
  }

  const pool = main?.best ?? [];
  if (main === null || pool.length === 0) throw nothingFound(field, main);
  yield { index: index++, kind: 'progress', stage: 'verify', task: 0, done: 0 };
  const placements = pool.map(({ points }) => placedAs(model, field, points, plan));
  const winner = verified(model, placements);
  return {
    objective: plan.objective ?? 'bow',
    best: pointOf(pool[winner.index], main),
    verified: winner.verified,
    curve,
    remarks: [
      ...searchRemarks(model, field, plan, main, winner),
      ...throughRemarks(field, plan, placements[winner.index].slice(field.fixed)),
    ],
  };

  function pointOf(
    best: Best,
    { isExhaustive, step, positions, placements: tried, starts, again, continuous }: TaskResult,
  ): PlacementPoint {
    const { bow, flatness, case: name, value } = best.reading;
    return {
      placement: placedAs(model, field, best.points, plan),
      bow,
      flatness,
      case: name,
      keepsLimits: value < BROKEN,
      siteGap: Math.min(...best.points.map((at) => field.room.siteGap(at))),
      how: { method: isExhaustive ? 'all' : 'search', step, positions, placements: tried, starts, again, continuous },
    };
  }

  function curvePoint(over: CurvePoint['over'], at: number, result: TaskResult): CurvePoint {
    const [best] = result.best;
    if (best !== undefined) return { over, at, best: pointOf(best, result), refused: null };
    return { over, at, best: null, refused: nothingFound(field, result).message };
  }
}

function settingsOf(plan: PlacementPlan): Settings {
  const { about = [0, 0], step = null, spacing = 0, seed = 1, starts = 12, most = 300_000 } = plan;
  const centre: Point = about;
  return { about: centre, step, spacing, seed, starts, most, continuous: plan.continuous ?? step === null };
}

function requireSome(groups: readonly GroupPlan[], count: number, fixed: number): void {
  if (groups.every((group) => group.count > 0)) return;
  throw new Fault(
    'OUT_OF_RANGE',
    `The plan places ${count} fasteners in all and keeps ${fixed} where they are, which leaves none to place. Raise "count", or name fewer in "fixed".`,
    'count',
    { value: count, expected: `above ${fixed}` },
  );
}

function nothingFound({ fixed, through }: HeadField, result: TaskResult | null): Fault {
  const positions = result?.positions ?? 0;
  if (result?.isUneven)
    return new Fault(
      'MECHANISM',
      `No placement was found: sets of mirrored positions do not add up to that many fasteners. Under two mirrors they are four, two where a mirror runs, and one at the centre, as far as these ${positions} positions are open; under one mirror two, and one on it. Use another count, or fewer mirrors.`,
      'count',
      { positions },
    );
  return new Fault(
    'MECHANISM',
    `No placement was found that holds the head: the grid has ${positions} open positions${fixed > 0 ? ` beside ${fixed} fixed fasteners` : ''}. Place three fasteners or more, or give them more room: a smaller clearance, edge or spacing, ${through === 'either' ? '' : '"through": "either", '}or a finer step.`,
    'count',
    { positions },
  );
}
