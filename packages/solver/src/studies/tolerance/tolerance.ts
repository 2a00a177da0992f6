import { Fault } from '../../fault/fault.ts';
import type { HeadModel } from '../../model/head-model.ts';
import { checkSchema } from '../../plate/check-schema.ts';
import { type Judged, judgedOf, orFault } from '../judged.ts';
import { placeParameters, variantOf } from '../parameter.ts';
import { significant } from '../significant.ts';
import { type Study, type StudyOptions, studySteps } from '../study.ts';
import { baseMeshSolver } from '../variant-solver.ts';
import { type TolerancePlan, tolerancePlanSchema } from './plan.ts';
import { type ToleranceRow, toleranceRowSchema } from './row.ts';
import { scatterModel } from './scatter-model.ts';
import { type ToleranceSummary, toleranceSummary } from './summary.ts';
import { unitSamples } from './unit-samples.ts';

/**
 * A tolerance study made ready. With indices the rows come in blocks: a head A, an independent head B, and A with one cause
 * after the other as in B.
 *
 * Heads stand on the mesh of the model itself where their shapes are the same, so that what is compared is the head.
 *
 * @throws Fault for a plan that makes no sense on this model
 */
export function toleranceStudy(model: HeadModel, unchecked: unknown): Study<ToleranceRow, ToleranceSummary> {
  const plan = checkSchema(tolerancePlanSchema, unchecked, 'plan of a tolerance study');
  const { samples, seed, sampling = 'sobol', indices = false, errors = false } = plan;
  const variable = placeParameters(model, plan.vary);
  const scatter = scatterModel(plan, variable.parameters);
  if (indices && scatter.causes.length === 0)
    throw new Fault(
      'SCHEMA',
      'Sobol indices take causes that are independent of each other, but the plan has correlations. Leave out "indices", or describe what parts have in common by "lot".',
      'indices',
    );
  const { dimensions, causes } = scatter;
  const blockSize = indices ? 2 + causes.length : 1;
  const points = unitSamples(sampling, seed, indices ? 2 * dimensions : dimensions, samples);
  const settingsOf = (index: number) => {
    const point = points(Math.floor(index / blockSize));
    return scatter.settings(mixed(point, index % blockSize));
  };
  /** The head of a block: A, B, or A with a cause of B. */
  const mixed = (point: Float64Array, member: number): Float64Array => {
    const a = point.slice(0, dimensions);
    if (member === 0) return a;
    const b = point.subarray(dimensions);
    if (member === 1) return b;
    for (const dimension of causes[member - 2].dimensions) a[dimension] = b[dimension];
    return a;
  };
  // A wrong path is refused now, not in every row; a first head that is merely impossible is a row with a fault.
  variantOf(variable, scatter.settings(new Float64Array(dimensions).fill(0.5)));
  return {
    kind: 'tolerance',
    plan,
    total: samples * blockSize,
    row: toleranceRowSchema,
    *rows(wanted) {
      const solver = baseMeshSolver(variable.model, errors);
      try {
        for (const index of wanted) {
          const settings = settingsOf(index);
          const judged: Judged = orFault(() => judgedOf(solver.judge(variantOf(variable, settings))));
          yield { index, settings: settings.map(rounded), ...judged };
        }
      } finally {
        solver.end();
      }
    },
    summary: (rows) => toleranceSummary(plan, variable.parameters, indices ? causes : [], rows),
  };
}

/** Runs a tolerance study: yields its heads and returns what they say together. */
export function toleranceSteps(
  model: HeadModel,
  plan: TolerancePlan,
  options: StudyOptions = {},
): Generator<ToleranceRow, ToleranceSummary, void> {
  return studySteps(toleranceStudy(model, plan), options);
}

function rounded(setting: number | number[]): number | number[] {
  return typeof setting === 'number' ? significant(setting) : setting.map(significant);
}
