import type { Point } from '../../geometry/point.ts';
import type { Goal } from './goal.ts';
import { type Judge, judgeOf } from './judge.ts';
import type { RmsForm } from './rms-form.ts';
import type { Room } from './room.ts';
import type { Ground, Place, Stand } from './stand.ts';

/** Everything that a search for placements stands on: a head or a plate, and what may hold it where. */
export interface Field {
  /** Each takes every placement; more than one where a joint is bracketed, where probes relax, or where heat softens. */
  readonly grounds: readonly Ground[];
  readonly goal: Goal;
  readonly room: Room;
  /** Fasteners that stay, then cells of seats; they hold in every placement. */
  readonly always: readonly Place[];
  /** Fasteners among them. */
  readonly fixed: number;
  /** What would hold at a position. */
  placeAt(at: Point): Place;
  /** Least distance between axes: that at which heads touch, mm. */
  readonly touching: number;
  /** Root mean square over the area of the objective `rms`; `null` otherwise. */
  readonly form: ((stand: Stand) => RmsForm) | null;
}

/** Judge of placements that are columns of the stands. */
export function fieldJudge({ goal, form }: Field, stands: readonly Stand[], most: number): Judge {
  return judgeOf(stands, goal, form === null ? null : stands.map(form), most);
}

/** Positions of the fasteners that stay. */
export function fixedPoints({ always, fixed }: Field): Point[] {
  return always.slice(0, fixed).map(({ at }) => at);
}
