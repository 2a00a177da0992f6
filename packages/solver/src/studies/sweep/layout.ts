import { Fault } from '../../fault/fault.ts';
import { type Parameter, type Setting, type Variable, variantOf } from '../parameter.ts';
import { axisValues } from './axis-values.ts';
import { MOST_ROWS, type SweepPlan } from './plan.ts';
import { depthOfChange } from './reuse-order.ts';

/** Settings of every row, and the axis along which rows are neighbours. */
export interface Layout {
  readonly parameters: readonly Parameter[];
  readonly total: number;
  settings(index: number): readonly Setting[];
  /** Index of the parameter that changes fastest, and how many rows a line along it has; null for a design. */
  readonly fast: { readonly axis: number; readonly count: number } | null;
}

/** Numbers the rows of a plan. @throws Fault TOO_LARGE or SCHEMA */
export function layoutOf(plan: SweepPlan, variable: Variable): Layout {
  return 'vary' in plan ? gridLayout(plan, variable) : designLayout(plan);
}

function gridLayout({ vary }: Extract<SweepPlan, { vary: unknown }>, variable: Variable): Layout {
  const values = vary.map(axisValues);
  const total = values.reduce((product, axis) => product * axis.length, 1);
  if (total > MOST_ROWS)
    throw new Fault('TOO_LARGE', `The sweep has ${total} variants; at most ${MOST_ROWS} are solved.`, 'vary', {
      value: total,
      expected: `at most ${MOST_ROWS}`,
    });
  const first = values.map(([value]) => value);
  const depths = values.map((axis, i) =>
    depthOfChange(
      () => variantOf(variable, first),
      () => variantOf(variable, first.with(i, axis[axis.length - 1])),
    ),
  );
  // Slowest first; axes alike stay in the order of the plan.
  const order = values.map((_, i) => i).sort((a, b) => depths[b] - depths[a]);
  const fast = order[order.length - 1];
  return {
    parameters: vary,
    total,
    fast: { axis: fast, count: values[fast].length },
    settings(index) {
      const settings = [...first];
      let rest = index;
      for (const axis of order.toReversed()) {
        settings[axis] = values[axis][rest % values[axis].length];
        rest = Math.floor(rest / values[axis].length);
      }
      return settings;
    },
  };
}

function designLayout({ design: { parameters, rows } }: Extract<SweepPlan, { design: unknown }>): Layout {
  const short = rows.findIndex((settings) => settings.length !== parameters.length);
  if (short >= 0)
    throw new Fault(
      'SCHEMA',
      `Row ${short} of the design has ${rows[short].length} settings for ${parameters.length} parameters. Give one for each.`,
      `design.rows.${short}`,
      { value: rows[short].length, expected: parameters.length },
    );
  return { parameters, total: rows.length, fast: null, settings: (index) => rows[index] };
}
