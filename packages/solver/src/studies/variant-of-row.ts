import { Fault } from '../fault/fault.ts';
import type { HeadModel } from '../model/head-model.ts';
import { checkHeadModel } from '../model/read.ts';
import { checkSchema } from '../plate/check-schema.ts';
import { placeParameters, variantOf } from './parameter.ts';
import { sitesPlanSchema } from './sites/plan.ts';
import { withPattern } from './sites/sites.ts';
import { sweepPlanSchema } from './sweep/plan.ts';
import type { SweepRow } from './sweep/row.ts';
import { tolerancePlanSchema } from './tolerance/plan.ts';
import type { ToleranceRow } from './tolerance/row.ts';

/** Of a site study: all that makes the head again. */
interface PatternRow {
  readonly columns: number;
  readonly rows: number;
  readonly skip: readonly [number, number];
}

/**
 * The head that a row of a study was judged on, to be opened as a model.
 *
 * @throws Fault of the schema when no head can be built of it
 */
export function variantOfRow(
  study: 'sweep' | 'tolerance' | 'sites',
  model: HeadModel,
  plan: unknown,
  row: Pick<SweepRow | ToleranceRow, 'settings'> | PatternRow,
): HeadModel {
  if (study === 'sites' && 'columns' in row) {
    const checked = checkSchema(sitesPlanSchema, plan, 'plan of site patterns');
    const die = checked.die ?? model.sites.die;
    if (die === undefined) throw new Fault('SCHEMA', 'The plan has no size of a die. Give "die" in mm.', 'die');
    const { columns, rows, skip } = row;
    return checkHeadModel(withPattern(model, { columns, rows, skip: [skip[0], skip[1]] }, die, checked));
  }
  if (!('settings' in row)) throw new Fault('SCHEMA', 'The row has no settings to make a head of.', 'settings');
  return variantOf(placeParameters(model, parametersOf(study, plan)), row.settings);
}

function parametersOf(study: 'sweep' | 'tolerance' | 'sites', plan: unknown) {
  if (study === 'tolerance') return checkSchema(tolerancePlanSchema, plan, 'plan of a tolerance study').vary;
  const sweep = checkSchema(sweepPlanSchema, plan, 'plan of a sweep');
  return 'vary' in sweep ? sweep.vary : sweep.design.parameters;
}
