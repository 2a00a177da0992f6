import type { Point } from '../../geometry/point.ts';
import { type Field, fieldJudge } from './field.ts';
import type { Reading } from './goal.ts';
import { images } from './orbits.ts';
import { type Polished, polish } from './polish.ts';
import type { Found } from './search.ts';
import { columnOf, type Stand, standOn } from './stand.ts';
import type { Best, Settings, Task, TaskStep } from './task.ts';

/** Placements of the best of the grid that are read in full. */
export const POOL = 5;
/** Placements tried off the grid: a heat for each orbit of each of the best of the grid, then all for the best of them. */
const [HEAT, MOVED, TRIALS] = [40, 2, 1200];

/**
 * Which of the grid is best off it shows only there: all are moved for a while, then the best of them on.
 *
 * @param stands whose first columns always hold
 * @param found best of the grid first
 * @param task index of the task in what it yields
 */
export function* offGrid(
  field: Field,
  stands: readonly Stand[],
  found: readonly Found[],
  { clearance, groups }: Task,
  task: number,
  { about, spacing, step, seed }: Pick<Settings, 'about' | 'spacing' | 'seed'> & { readonly step: number },
): Generator<TaskStep, Best[], void> {
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

/** What positions on or off the grid give. @param stands whose first columns always hold */
function readingAt(field: Field, stands: readonly Stand[], points: readonly Point[]): Reading {
  const own = stands.map(({ ground, columns, fixed, always }) => {
    const made = points.map((at) => columnOf(ground, field.placeAt(at)));
    return standOn(ground, [...columns.slice(0, always), ...made], fixed, always);
  });
  return fieldJudge(field, own, points.length).reading(points.map((_, i) => field.always.length + i));
}
