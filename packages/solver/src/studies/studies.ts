import type { HeadModel } from '../model/head-model.ts';
import { budgetStudy } from './budget/budget.ts';
import { sitesStudy } from './sites/sites.ts';
import type { Study, StudyKind } from './study.ts';
import { sweepStudy } from './sweep/sweep.ts';
import { toleranceStudy } from './tolerance/tolerance.ts';

const MAKERS: Readonly<Record<StudyKind, (model: HeadModel, plan: unknown) => Study>> = {
  sweep: sweepStudy,
  tolerance: toleranceStudy,
  budget: budgetStudy,
  sites: sitesStudy,
};

/**
 * A study of a kind made ready.
 *
 * @throws Fault for a plan that makes no sense on this model
 */
export function studyOf(kind: StudyKind, model: HeadModel, plan: unknown): Study {
  return MAKERS[kind](model, plan);
}
