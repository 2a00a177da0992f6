import type { Point } from '../../geometry/point.ts';
import type { HeadModel } from '../../model/head-model.ts';
import { fixedPoints } from './field.ts';
import type { HeadField } from './head-field.ts';
import type { Placement } from './placement.ts';

/**
 * A complete placement: fasteners that stay, and those placed under the names of the model, each position taking the
 * name of the nearest fastener left; new names where the model has too few.
 */
export function placedAs({ fasteners }: HeadModel, field: HeadField, points: readonly Point[]): Placement {
  const { fixedNames, like } = field;
  const stay = fixedPoints(field).map((at, i) => ({
    name: fixedNames[i],
    at: [at[0], at[1]] as [number, number],
    like: fixedNames[i],
  }));
  const left = fasteners.filter(({ name }) => !fixedNames.includes(name));
  const open = [...points];
  const named: Placement = [];
  const pairs = left
    .flatMap((fastener) => points.map((at) => ({ fastener, at, away: distance(fastener.at, at) })))
    .sort((a, b) => a.away - b.away);
  for (const { fastener, at } of pairs) {
    if (!open.includes(at) || named.some(({ name }) => name === fastener.name)) continue;
    open.splice(open.indexOf(at), 1);
    named.push({ name: fastener.name, at: [at[0], at[1]], like: like.name });
  }
  const inOrder = left.flatMap(({ name }) => named.filter((placed) => placed.name === name));
  const taken = new Set(fasteners.map(({ name }) => name));
  let number = fasteners.length;
  const added = open.map((at) => {
    do number++;
    while (taken.has(`F${number}`));
    return { name: `F${number}`, at: [at[0], at[1]] as [number, number], like: like.name };
  });
  return [...stay, ...inOrder, ...added];
}

function distance(a: Point, b: Point): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1]);
}
