import { z } from 'zod';
import { Fault } from '../../fault/fault.ts';
import type { HeadModel } from '../../model/head-model.ts';
import { checkSchema } from '../../plate/check-schema.ts';
import { type Judged, judgedFields, judgedOf, orFault } from '../judged.ts';
import {
  type Parameter,
  placeParameters,
  type Setting,
  settingSchema,
  type Variable,
  variantOf,
} from '../parameter.ts';
import { type Study, type StudyOptions, studySteps } from '../study.ts';
import { ownMeshSolver } from '../variant-solver.ts';
import { axisValues } from './axis-values.ts';
import { type Crossing, crossingsAlong, type LinePoint } from './crossing.ts';
import { MOST_ROWS, type SweepPlan, sweepPlanSchema } from './plan.ts';
import { depthOfChange } from './reuse-order.ts';

const row = z.strictObject({
  index: z.number().int().min(0),
  settings: z.array(settingSchema).describe('of the parameters, in the order of the plan'),
  ...judgedFields,
});

/** One variant of a sweep. */
export type SweepRow = z.infer<typeof row>;

export interface SweepSummary {
  /** Names of the parameters, in the order of the settings of a row. */
  readonly parameters: readonly string[];
  readonly outcomes: {
    readonly pass: number;
    readonly marginal: number;
    readonly fail: number;
    readonly fault: number;
  };
  /** Where limits are crossed along the parameter whose step costs least. */
  readonly crossings: readonly Crossing[];
}

/** Settings of every row, and the axis along which rows are neighbours. */
interface Layout {
  readonly parameters: readonly Parameter[];
  readonly total: number;
  settings(index: number): readonly Setting[];
  /** Index of the parameter that changes fastest, and how many rows a line along it has; null for a design. */
  readonly fast: { readonly axis: number; readonly count: number } | null;
}

/**
 * A sweep made ready. Rows are numbered so that what is dear to change - first of all what asks for a new mesh - changes
 * most seldom.
 *
 * @throws Fault for a plan that makes no sense on this model
 */
export function sweepStudy(model: HeadModel, unchecked: unknown): Study<SweepRow, SweepSummary, SweepPlan> {
  const plan = checkSchema(sweepPlanSchema, unchecked, 'plan of a sweep');
  const { errors = false } = plan;
  const variable = placeParameters(model, 'vary' in plan ? plan.vary : plan.design.parameters);
  const layout = 'vary' in plan ? gridLayout(plan, variable) : designLayout(plan);
  requireSense(variable, layout);
  return {
    kind: 'sweep',
    plan,
    total: layout.total,
    row,
    *rows(indices) {
      const solver = ownMeshSolver(model, errors);
      try {
        for (const index of indices) {
          const settings = layout.settings(index);
          const judged: Judged = orFault(() => judgedOf(solver.judge(variantOf(variable, settings))));
          yield { index, settings: [...settings], ...judged };
        }
      } finally {
        solver.end();
      }
    },
    summary: (rows) => ({
      parameters: variable.parameters.map(({ name }) => name),
      outcomes: outcomesOf(rows),
      crossings: 'vary' in plan && plan.crossings !== false ? allCrossings(model, variable, layout, rows) : [],
    }),
  };
}

/** Runs a sweep: yields its rows and returns its summary. */
export function sweepSteps(
  model: HeadModel,
  plan: SweepPlan,
  options: StudyOptions = {},
): Generator<SweepRow, SweepSummary, void> {
  return studySteps(sweepStudy(model, plan), options);
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

/** A plan of which neither the first nor the last variant is a head model has a wrong path, not a bad value. */
function requireSense(variable: Variable, { total, settings }: Layout): void {
  const first = orFault(() => variantOf(variable, settings(0)));
  const last = orFault(() => variantOf(variable, settings(total - 1)));
  if ('fault' in first && 'fault' in last) variantOf(variable, settings(0));
}

function outcomesOf(rows: readonly SweepRow[]): SweepSummary['outcomes'] {
  const count = (wanted: string): number => rows.filter(({ outcome }) => outcome === wanted).length;
  return {
    pass: count('pass'),
    marginal: count('marginal'),
    fail: count('fail'),
    fault: rows.filter(({ fault }) => fault !== undefined).length,
  };
}

function allCrossings(model: HeadModel, variable: Variable, { fast }: Layout, rows: readonly SweepRow[]): Crossing[] {
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
