import { Fault } from '../../fault/fault.ts';
import { type Choice, compositions } from './choices.ts';
import { type Field, fieldJudge } from './field.ts';
import { offGrid, POOL } from './off-grid.ts';
import { clearOf, gridOf, spacingOf } from './open-grid.ts';
import { orbitsOf } from './orbits.ts';
import { searchGrid } from './search.ts';
import { type Place, type Stand, standOnMany } from './stand.ts';
import type { Settings, Task, TaskStep } from './task.ts';

/** Numbers kept in memory. */
const LARGEST = 6e7;

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
  const stands = yield* standsOf(field, places);
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
      ? yield* offGrid(field, stands, found, tasks[task], task, { ...settings, spacing, step })
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
}

/** Flexibility of all places on each ground of the field. */
function* standsOf(field: Field, places: readonly Place[]): Generator<TaskStep, Stand[], void> {
  const stands: Stand[] = [];
  for (const ground of field.grounds) {
    const columns = standOnMany(ground, places, field.fixed, field.always.length);
    let next = columns.next();
    for (; !next.done; next = columns.next()) {
      const done = (stands.length + next.value / places.length) / field.grounds.length;
      yield { kind: 'progress', stage: 'flexibility', task: 0, done };
    }
    stands.push(next.value);
  }
  return stands;
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
