import { Fault } from '../../fault/fault.ts';
import type { Point } from '../../geometry/point.ts';
import { type Field, fixedPoints } from './field.ts';
import { areApart, gridPoints, type Orbit, orbitsOf } from './orbits.ts';
import type { Mirror } from './plan.ts';
import type { Settings } from './task.ts';

/** Positions that a grid is chosen to have at most, and those that it may have. */
const [USUAL, MOST] = [500, 6000];
/** Axes are at least this far apart, mm, so that no two fasteners are one. */
const APART = 1e-3;

/** Positions open on the grid of a search with one clearance. */
export interface OpenGrid {
  readonly points: readonly Point[];
  readonly spacing: number;
  orbits(mirror: Mirror): Orbit[];
}

/** @throws Fault OUTSIDE when the grid has no position, TOO_LARGE when it has too many */
export function openGrid(field: Field, settings: Settings, clearance: number): OpenGrid {
  const spacing = spacingOf(field, settings);
  const { points } = gridOf(field, settings, clearance, spacing);
  const siteGap = points.map((at) => field.room.siteGap(at));
  return {
    points,
    spacing,
    orbits: (mirror) => clearOf(orbitsOf(points, siteGap, mirror, settings.about, spacing), clearance),
  };
}

export function clearOf(orbits: readonly Orbit[], clearance: number): Orbit[] {
  return orbits.filter(({ siteGap }) => siteGap >= clearance - 1e-9);
}

export function spacingOf({ touching }: Field, { spacing }: Settings): number {
  return Math.max(spacing, touching, APART);
}

/** Grid positions that keep the least clearance, and the spacing from the fasteners that stay. */
export function gridOf(field: Field, { about, step: asked }: Settings, clearance: number, spacing: number) {
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
