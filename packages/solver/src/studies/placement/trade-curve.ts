import type { Settings, Task } from './best-placements.ts';
import type { HeadField } from './head-field.ts';
import { gridPoints } from './orbits.ts';
import type { GroupPlan, PlacementPlan } from './plan.ts';

/** A search of a study: a point of its curve, or the one whose winner it judges. */
export interface StudyTask extends Task {
  readonly over: 'clearance' | 'count' | null;
  readonly at: number;
}

/** Points of a curve over the clearance where the plan gives none, and positions across the head to find its end. */
const [POINTS, LINES] = [8, 60];

/** The main search first, then one for each point of the curve. */
export function curveTasks(
  field: HeadField,
  { curve, mirror }: PlacementPlan,
  { about }: Settings,
  clearance: number,
  count: number,
  groups: (count: number) => GroupPlan[],
): StudyTask[] {
  const main: StudyTask = { over: null, at: 0, clearance, groups: groups(count) };
  if (curve === undefined) return [main];
  const { over } = curve;
  if (over === 'clearance')
    return [main, ...(curve.values ?? clearances()).map((at) => ({ over, at, clearance: at, groups: groups(count) }))];
  const stride = mirror === 'both' || mirror === 'x' || mirror === 'y' ? 2 : 1;
  const usual = [0, 1, 2, 3, 4].map((i) => Math.max(3, field.fixed + 1, 4 - stride) + i * stride);
  return [
    main,
    ...(curve.values ?? usual)
      .map((value) => Math.round(value))
      .filter((value) => value > field.fixed)
      .map((at) => ({ over, at, clearance, groups: groups(at) })),
  ];

  /** From none to nearly the most that the head has room for, in round steps. */
  function clearances(): number[] {
    const { min, max } = field.room.extent;
    const span = Math.max(max[0] - min[0], max[1] - min[1]);
    const gaps = gridPoints(field.room, span / LINES, about).map((at) => field.room.siteGap(at));
    const widest = gaps.reduce((most, gap) => Math.max(most, gap), 0);
    const step = Math.max(0.5, Math.floor((0.8 * widest * 2) / (POINTS - 1)) / 2);
    return Array.from({ length: POINTS }, (_, i) => i * step);
  }
}
