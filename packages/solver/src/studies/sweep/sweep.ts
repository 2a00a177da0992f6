import type { HeadModel } from '../../model/head-model.ts';
import { checkSchema } from '../../plate/check-schema.ts';
import { type Judged, judgedOf, orFault } from '../judged.ts';
import { placeParameters, type Variable, variantOf } from '../parameter.ts';
import { type Study, type StudyOptions, studySteps } from '../study.ts';
import { ownMeshSolver } from '../variant-solver.ts';
import type { Crossing } from './crossing.ts';
import { allCrossings } from './crossings.ts';
import { type Layout, layoutOf } from './layout.ts';
import { type SweepPlan, sweepPlanSchema } from './plan.ts';
import { type SweepRow, sweepRowSchema } from './row.ts';

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
  const layout = layoutOf(plan, variable);
  requireSense(variable, layout);
  return {
    kind: 'sweep',
    plan,
    total: layout.total,
    row: sweepRowSchema,
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
