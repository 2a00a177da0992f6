import { waysToChoose } from './choices.ts';
import type { HeadField } from './head-field.ts';
import { openGrid } from './open-grid.ts';
import { gridPoints } from './orbits.ts';
import type { GroupPlan, PlacementPlan } from './plan.ts';
import type { Settings, Task } from './task.ts';

/** A search of a study: a point of its curve, or the one whose winner it judges. */
export interface StudyTask extends Task {
  readonly over: 'clearance' | 'count' | null;
  readonly at: number;
}

/** Points of a curve over the clearance where the plan gives none, and positions across the head to find its end. */
const [POINTS, LINES] = [8, 60];
/** A curve over the count goes up to this or has so many points, and never beyond what a plan may place. */
const [USUAL_COUNT, FEWEST_POINTS, MOST_COUNT] = [8, 5, 60];

/** The main search first, then one for each point of the curve. */
export function curveTasks(
  field: HeadField,
  { curve, mirror = 'none' }: PlacementPlan,
  settings: Settings,
  clearance: number,
  count: number,
  groups: (count: number) => GroupPlan[],
): StudyTask[] {
  const main: StudyTask = { over: null, at: 0, clearance, groups: groups(count) };
  if (curve === undefined) return [main];
  const { over } = curve;
  if (over === 'clearance')
    return [main, ...(curve.values ?? clearances()).map((at) => ({ over, at, clearance: at, groups: groups(count) }))];
  return [
    main,
    ...(curve.values ?? counts())
      .map((value) => Math.round(value))
      .filter((value) => value > field.fixed)
      .map((at) => ({ over, at, clearance, groups: groups(at) })),
  ];

  /** Those that the orbits of the open positions add up to: under two mirrors fours, pairs on one and the centre. */
  function counts(): number[] {
    const orbits = openGrid(field, settings, clearance).orbits(mirror);
    const possible: number[] = [];
    for (let at = Math.max(3, field.fixed + 1); at <= MOST_COUNT; at++) {
      if (at > USUAL_COUNT && possible.length >= FEWEST_POINTS) break;
      if (waysToChoose([{ orbits, count: at - field.fixed }]) > 0) possible.push(at);
    }
    return possible;
  }

  /** From none to nearly the most that the head has room for, in round steps. */
  function clearances(): number[] {
    const { min, max } = field.room.extent;
    const span = Math.max(max[0] - min[0], max[1] - min[1]);
    const gaps = gridPoints(field.room, span / LINES, settings.about).map((at) => field.room.siteGap(at));
    const widest = gaps.reduce((most, gap) => Math.max(most, gap), 0);
    const step = Math.max(0.5, Math.floor((0.8 * widest * 2) / (POINTS - 1)) / 2);
    return Array.from({ length: POINTS }, (_, i) => i * step);
  }
}
