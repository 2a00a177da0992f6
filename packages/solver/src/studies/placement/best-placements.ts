import { Fault } from '../../fault/fault.ts';
import type { Point } from '../../geometry/point.ts';
import { type Choice, compositions } from './choices.ts';
import { type Field, fieldJudge, fixedPoints } from './field.ts';
import type { Reading } from './goal.ts';
import { areApart, gridPoints, images, type Orbit, orbitsOf } from './orbits.ts';
import type { GroupPlan, Mirror } from './plan.ts';
import { type Polished, polish } from './polish.ts';
import { type Found, searchGrid } from './search.ts';
import { columnOf, type Stand, standOn, standOnMany } from './stand.ts';

/** One search: a clearance and how many fasteners. */
export interface Task {
  readonly clearance: number;
  readonly groups: readonly GroupPlan[];
}

/** How all tasks are searched. */
export interface Settings {
  readonly about: Point;
  /** `null` chooses one. */
  readonly step: number | null;
  readonly continuous: boolean;
  readonly spacing: number;
  readonly seed: number;
  readonly starts: number;
  readonly most: number;
}

/** The best that one task found. */
export interface Best {
  readonly points: readonly Point[];
  readonly reading: Reading;
  /** Value on the grid, before it was moved off it; see {@link Reading.value}. */
  readonly gridValue: number;
}

export interface TaskResult {
  /** Grid step, mm. */
  readonly step: number;
  /** Positions on the grid that keep the clearance. */
  readonly positions: number;
  /** Whether there are positions enough, but the orbits that mirrors make of them do not add up to the counts. */
  readonly isUneven: boolean;
  readonly isExhaustive: boolean;
  /** Placements tried when exhaustive. */
  readonly placements: number;
  readonly starts: number;
  readonly again: number;
  readonly continuous: boolean;
  /** Best first; empty when no placement was found. */
  readonly best: readonly Best[];
}

/** What a run of tasks says on its way. */
export type TaskStep =
  | {
      readonly kind: 'progress';
      readonly stage: 'flexibility' | 'search' | 'polish';
      readonly task: number;
      readonly done: number;
    }
  | { readonly kind: 'better'; readonly task: number; readonly value: number; readonly points: readonly Point[] }
  | { readonly kind: 'result'; readonly task: number; readonly result: TaskResult };

/** Positions that a grid is chosen to have at most, and those that it may have. */
const [USUAL, MOST] = [500, 6000];
/** Numbers kept in memory. */
const LARGEST = 6e7;
/** Axes are at least this far apart, mm, so that no two fasteners are one. */
const APART = 1e-3;
/** Placements of the best of the grid that are read in full. */
const POOL = 5;
/** Placements tried off the grid: a heat for each orbit of each of the best of the grid, then all for the best of them. */
const [HEAT, MOVED, TRIALS] = [40, 2, 1200];

/**
 * The best placement of each task, all on the same grid and by the same flexibilities.
 *
 * @throws Fault OUTSIDE when the grid has no position, TOO_LARGE when it has too many
 */
export function* bestPlacements(
  field: Field,
  tasks: readonly Task[],
  settings: Settings,
): Generator<TaskStep, void, void> {
  const spacing = spacingOf(field, settings);
  const least = Math.min(...tasks.map(({ clearance }) => clearance));
  const { step, points } = gridOf(field, settings, least, spacing);
  const siteGap = points.map((at) => field.room.siteGap(at));
  requireRoomInMemory(field, points.length);
  const first = field.always.length;
  const most = Math.max(...tasks.map(({ groups }) => groups.reduce((sum, { count }) => sum + count, 0)));

  const places = [...field.always, ...points.map((at) => field.placeAt(at))];
  const stands: Stand[] = [];
  for (const ground of field.grounds) {
    const columns = standOnMany(ground, places, field.fixed, first);
    for (;;) {
      const next = columns.next();
      if (next.done) {
        stands.push(next.value);
        break;
      }
      const done = (stands.length + next.value / places.length) / field.grounds.length;
      yield { kind: 'progress', stage: 'flexibility', task: 0, done };
    }
  }
  const judge = fieldJudge(field, stands, most);
  for (const [task, { clearance, groups }] of tasks.entries()) {
    const choices = groups.map(
      ({ count, mirror }): Choice => ({
        count,
        orbits: clearOf(orbitsOf(points, siteGap, mirror, settings.about, spacing), clearance),
      }),
    );
    const search = searchGrid(judge, choices, points, first, { ...settings, spacing });
    let next = search.next();
    for (; !next.done; next = search.next()) {
      const { done, better } = next.value;
      if (better === null) yield { kind: 'progress', stage: 'search', task, done };
      else yield { kind: 'better', task, value: better.value, points: better.chosen.map((point) => points[point]) };
    }
    const { found, ...how } = next.value;
    const best = settings.continuous
      ? yield* offGrid(found, groups, task, clearance)
      : found.slice(0, POOL).map(({ chosen, value }) => ({
          points: chosen.map((point) => points[point]),
          gridValue: value,
          reading: judge.reading(chosen.map((point) => point + first)),
        }));
    const positions = siteGap.filter((gap) => gap >= clearance - 1e-9).length;
    const isEnough = positions >= groups.reduce((sum, { count }) => sum + count, 0);
    const isUneven = isEnough && choices.some((choice) => compositions(choice).length === 0);
    yield {
      kind: 'result',
      task,
      result: { step, positions, isUneven, continuous: settings.continuous, best, ...how },
    };
  }

  /** Which of the grid is best off it shows only there: all are moved for a while, then the best of them on. */
  function* offGrid(
    found: readonly Found[],
    groups: readonly GroupPlan[],
    task: number,
    clearance: number,
  ): Generator<TaskStep, Best[], void> {
    const { about, seed } = settings;
    let least = found[0]?.value ?? 0;
    const moved: (Polished & { readonly gridValue: number })[] = found.map(({ value, orbits }) => ({
      value,
      gridValue: value,
      slots: orbits.map(({ group, orbit }) => ({ at: orbit.at, mirror: groups[group].mirror })),
    }));
    for (const most of [HEAT * (found[0]?.orbits.length ?? 0), TRIALS]) {
      for (const [rank, start] of moved.entries()) {
        if (most === TRIALS && rank >= MOVED) break;
        const moves = polish(field, stands, start, { about, clearance, spacing, step, seed, most });
        let next = moves.next();
        for (; !next.done; next = moves.next())
          if (next.value % 16 === 0) yield { kind: 'progress', stage: 'polish', task, done: next.value };
        const { value, slots } = next.value;
        moved[rank] = { value, slots, gridValue: start.gridValue };
        if (value < least) yield { kind: 'better', task, value, points: pointsOf(slots) };
        least = Math.min(least, value);
      }
      moved.sort((a, b) => a.value - b.value);
    }
    return moved.slice(0, POOL).map(({ slots, gridValue }) => {
      const own = pointsOf(slots);
      return { points: own, gridValue, reading: readingAt(field, stands, own) };
    });

    function pointsOf(slots: Polished['slots']): Point[] {
      return slots.flatMap(({ at, mirror }) => images(at, mirror, about));
    }
  }
}

/** Orbits of the positions open on the grid of a search with one clearance. @throws Fault OUTSIDE or TOO_LARGE */
export function openOrbits(field: Field, settings: Settings, clearance: number, mirror: Mirror): Orbit[] {
  const spacing = spacingOf(field, settings);
  const { points } = gridOf(field, settings, clearance, spacing);
  const siteGap = points.map((at) => field.room.siteGap(at));
  return clearOf(orbitsOf(points, siteGap, mirror, settings.about, spacing), clearance);
}

function clearOf(orbits: readonly Orbit[], clearance: number): Orbit[] {
  return orbits.filter(({ siteGap }) => siteGap >= clearance - 1e-9);
}

function spacingOf({ touching }: Field, { spacing }: Settings): number {
  return Math.max(spacing, touching, APART);
}

/** What positions on or off the grid give. @param stands whose first columns always hold */
function readingAt(field: Field, stands: readonly Stand[], points: readonly Point[]): Reading {
  const own = stands.map(({ ground, columns, fixed, always }) => {
    const made = points.map((at) => columnOf(ground, field.placeAt(at)));
    return standOn(ground, [...columns.slice(0, always), ...made], fixed, always);
  });
  return fieldJudge(field, own, points.length).reading(points.map((_, i) => field.always.length + i));
}

/** Grid positions that keep the least clearance, and the spacing from the fasteners that stay. */
function gridOf(field: Field, { about, step: asked }: Settings, clearance: number, spacing: number) {
  const fixed = fixedPoints(field);
  const on = (step: number): Point[] =>
    gridPoints(field.room, step, about).filter(
      (at) => field.room.siteGap(at) >= clearance - 1e-9 && fixed.every((other) => areApart([other, at], spacing)),
    );
  const { min, max } = field.room.extent;
  const span = Math.max(max[0] - min[0], max[1] - min[1]);
  if (asked !== null && (span / asked) ** 2 > 100 * MOST) throw tooMany(asked, Infinity);
  let step = asked ?? 1000;
  let points: Point[] = [];
  if (asked !== null) points = on(asked);
  else
    for (const finer of niceSteps(span)) {
      const more = on(finer);
      if (more.length > USUAL && points.length > 0) break;
      [step, points] = [finer, more];
    }
  if (points.length === 0)
    throw new Fault(
      'OUTSIDE',
      `No position of a grid of ${step} mm is open to a fastener: keep-outs, sites with a clearance of ${clearance} mm, edges and steps of the head leave no room. Use a smaller clearance or a finer step.`,
      'step',
      { value: step },
    );
  if (points.length > MOST) throw tooMany(step, points.length);
  return { step, points };
}

function tooMany(step: number, count: number): Fault {
  return new Fault(
    'TOO_LARGE',
    `A grid of ${step} mm has ${Number.isFinite(count) ? count : 'far too many'} positions. Use a coarser step, and let "continuous" move the best off the grid.`,
    'step',
    { value: step, expected: `at most ${MOST} positions` },
  );
}

/** Round steps from a twelfth of the span down to a 200th. */
function niceSteps(span: number): number[] {
  const steps: number[] = [];
  for (let power = Math.ceil(Math.log10(span)); power >= Math.floor(Math.log10(span)) - 3; power--)
    for (const digit of [8, 6, 5, 4, 3, 2.5, 2, 1.5, 1.2, 1]) steps.push(Number((digit * 10 ** power).toPrecision(3)));
  return steps.filter((step) => step <= span / 12 && step >= span / 200);
}

function requireRoomInMemory({ grounds, always }: Field, count: number): void {
  const columns = always.length + count;
  const numbers = grounds.reduce((sum, { nodes }) => sum + columns * (3 * nodes.length + columns), 0);
  if (numbers <= LARGEST) return;
  throw new Fault(
    'TOO_LARGE',
    `${count} positions on a mesh this fine need ${Math.round(numbers / 1.25e5)} MB. Use a coarser step, and let "continuous" move the best off the grid, or a coarser mesh.`,
    'step',
    { value: numbers, expected: `at most ${LARGEST} numbers` },
  );
}
