import type { Point } from '../../geometry/point.ts';
import type { HeadModel } from '../../model/head-model.ts';
import { fixedPoints } from './field.ts';
import type { HeadField } from './head-field.ts';
import { leastAssignment } from './least-assignment.ts';
import { partnerSets } from './partners.ts';
import type { Placement } from './placement.ts';
import type { Mirror, PlacementPlan } from './plan.ts';

/**
 * A complete placement: fasteners that stay, and those placed under the names of the model, so that partners across the
 * mirrors stay partners where sets of as many are placed, and all together move least; new names where the model has too few.
 */
export function placedAs(
  { fasteners }: HeadModel,
  field: HeadField,
  points: readonly Point[],
  plan: PlacementPlan = {},
): Placement {
  const { fixedNames, like } = field;
  const left = fasteners.filter(({ name }) => !fixedNames.includes(name));
  const taken = moves(
    left.map(({ at }) => at),
    points,
    mirrorOf(plan),
    plan.about ?? [0, 0],
  );
  const placed = (name: string, [x, y]: Point, pattern: string) => ({
    name,
    at: [x, y] as [number, number],
    like: pattern,
  });
  const stay = fixedPoints(field).map((at, i) => placed(fixedNames[i], at, fixedNames[i]));
  const moved = left.flatMap(({ name }, i) => (taken[i] < 0 ? [] : [placed(name, points[taken[i]], like.name)]));
  const known = new Set(fasteners.map(({ name }) => name));
  let number = fasteners.length;
  const added = points.flatMap((at, i) => {
    if (taken.includes(i)) return [];
    do number++;
    while (known.has(`F${number}`));
    return [placed(`F${number}`, at, like.name)];
  });
  return [...stay, ...moved, ...added];
}

/** For each old place the new one, -1 for none: set by set of as many, then one by one what is left over. */
function moves(from: readonly Point[], to: readonly Point[], mirror: Mirror, about: Point): number[] {
  const taken = from.map(() => -1);
  const [old, fresh] = [partnerSets(from, mirror, about), partnerSets(to, mirror, about)];
  for (const size of [4, 2]) {
    const [a, b] = [old, fresh].map((sets) => sets.filter(({ length }) => length === size));
    const within = (i: number, j: number) =>
      leastWithin(
        a[i].map((k) => from[k]),
        b[j].map((k) => to[k]),
      );
    for (const [i, j] of leastAssignment(a.length, b.length, (i, j) => within(i, j).sum).entries())
      if (j >= 0) for (const [k, l] of within(i, j).taken.entries()) taken[a[i][k]] = b[j][l];
  }
  const rest = [...from.keys()].filter((i) => taken[i] < 0);
  const open = [...to.keys()].filter((j) => !taken.includes(j));
  for (const [i, j] of leastWithin(
    rest.map((i) => from[i]),
    open.map((j) => to[j]),
  ).taken.entries())
    if (j >= 0) taken[rest[i]] = open[j];
  return taken;
}

function leastWithin(from: readonly Point[], to: readonly Point[]) {
  const away = (i: number, j: number) => Math.hypot(from[i][0] - to[j][0], from[i][1] - to[j][1]);
  const taken = leastAssignment(from.length, to.length, away);
  return { taken, sum: taken.reduce((sum, j, i) => sum + (j < 0 ? 0 : away(i, j)), 0) };
}

/** The mirror of all that are placed; none where groups differ. */
function mirrorOf({ mirror = 'none', groups }: PlacementPlan): Mirror {
  if (groups === undefined) return mirror;
  const [first, ...others] = groups.map((group) => group.mirror ?? 'none');
  return others.every((other) => other === first) ? first : 'none';
}
