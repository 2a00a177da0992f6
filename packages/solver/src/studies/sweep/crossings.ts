import type { HeadModel } from '../../model/head-model.ts';
import { type Variable, variantOf } from '../parameter.ts';
import { ownMeshSolver } from '../variant-solver.ts';
import { type Crossing, crossingsAlong, type LinePoint } from './crossing.ts';
import type { Layout } from './layout.ts';
import type { SweepRow } from './row.ts';

/** Crossings of every line of rows along the fastest axis of a grid; none of a design. */
export function allCrossings(
  model: HeadModel,
  variable: Variable,
  { fast }: Layout,
  rows: readonly SweepRow[],
): Crossing[] {
  if (fast === null) return [];
  const { axis, count } = fast;
  const [quick, thorough] = [ownMeshSolver(model, false), ownMeshSolver(model, true)];
  const lines = new Map<number, SweepRow[]>();
  for (const line of rows) {
    const number = Math.floor(line.index / count);
    lines.set(number, [...(lines.get(number) ?? []), line]);
  }
  try {
    return [...lines.values()].flatMap((line) => {
      const { settings } = line[0];
      const points = line
        .flatMap(({ settings, figures }): LinePoint[] => {
          const x = settings[axis];
          return typeof x === 'number' && figures !== undefined ? [{ x, figures }] : [];
        })
        .sort((a, b) => a.x - b.x);
      const other = settings.findIndex((_, i) => i !== axis);
      return crossingsAlong(
        variable.parameters[axis].name,
        points,
        (x) => variantOf(variable, settings.with(axis, x)),
        quick.judge,
        thorough.judge,
      ).map((crossing) =>
        other < 0
          ? crossing
          : { ...crossing, at: { parameter: variable.parameters[other].name, value: settings[other] } },
      );
    });
  } finally {
    quick.end();
    thorough.end();
  }
}
