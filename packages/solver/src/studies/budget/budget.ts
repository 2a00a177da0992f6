import { z } from 'zod';
import { Fault } from '../../fault/fault.ts';
import type { HeadModel } from '../../model/head-model.ts';
import { checkSchema } from '../../plate/check-schema.ts';
import type { Outcome, Verdict } from '../../results/head-result.ts';
import { solveHead } from '../../solve-head.ts';
import { significant } from '../significant.ts';
import { type Study, type StudyOptions, studySteps } from '../study.ts';
import { type BudgetPlan, budgetPlanSchema } from './plan.ts';
import { budgetSums, mostAllowed, type Share } from './sums.ts';

const row = z.strictObject({
  index: z.number().int().min(0),
  name: z.string(),
  value: z.number().describe('magnitude, mm'),
  error: z.number().nullable().describe('numerical error of a value from the verdict, mm; null for the others'),
  adds: z.enum(['systematic', 'independent']),
  most: z.number().nullable().describe('it may be while all others stay, mm; null when the others alone are over'),
  left: z.number().nullable().describe('most less value, mm; negative where it must shrink'),
  from: z.string().optional().describe('criterion, case and site that it was taken from'),
});

/** One contributor of a budget. */
export type BudgetRow = z.infer<typeof row>;

export interface BudgetSummary {
  /** mm */
  readonly limit: number;
  readonly systematic: number;
  readonly independent: number;
  readonly total: number;
  readonly worstCase: number;
  /** Limit less total, mm. */
  readonly left: number;
  /** Limit less worst case, mm. */
  readonly leftWorstCase: number;
  /** Of the total; marginal within the numerical error of what the verdict gave. */
  readonly outcome: Outcome;
}

interface Contribution extends Share {
  readonly name: string;
  readonly error: number | null;
  readonly from?: string;
}

/**
 * A planarity budget made ready: systematic contributors add up, independent ones by root-sum-square, the worst case beside
 * it. What is taken from the verdict is systematic unless the plan says otherwise.
 *
 * @throws Fault for a plan that makes no sense
 */
export function budgetStudy(model: HeadModel, unchecked: unknown): Study<BudgetRow, BudgetSummary> {
  const plan = checkSchema(budgetPlanSchema, unchecked, 'plan of a budget');
  requireValues(plan, model);
  return {
    kind: 'budget',
    plan,
    total: plan.contributors.length,
    row,
    *rows(indices) {
      let contributions: Contribution[] | null = null;
      for (const index of indices) {
        contributions ??= contributionsOf(plan, model);
        const { name, value, error, adds, from } = contributions[index];
        const most = mostAllowed(contributions, index, plan.limit);
        yield {
          index,
          name,
          value: significant(value),
          error: error === null ? null : significant(error),
          adds,
          most: most === null ? null : significant(most),
          left: most === null ? null : significant(most - value),
          ...(from === undefined ? {} : { from }),
        };
      }
    },
    summary: (rows) => summaryOf(plan.limit, rows),
  };
}

/** Runs a budget: yields its contributors and returns their sums. */
export function budgetSteps(
  model: HeadModel,
  plan: BudgetPlan,
  options: StudyOptions = {},
): Generator<BudgetRow, BudgetSummary, void> {
  return studySteps(budgetStudy(model, plan), options);
}

function summaryOf(limit: number, rows: readonly BudgetRow[]): BudgetSummary {
  const { systematic, independent, total, worstCase } = budgetSums(rows);
  const error = rows.reduce((sum, row) => sum + (row.error ?? 0), 0);
  const over = total - limit;
  return {
    limit,
    systematic: significant(systematic),
    independent: significant(independent),
    total: significant(total),
    worstCase: significant(worstCase),
    left: significant(limit - total),
    leftWorstCase: significant(limit - worstCase),
    outcome: over > error ? 'fail' : over > -error ? 'marginal' : 'pass',
  };
}

function contributionsOf({ contributors }: BudgetPlan, model: HeadModel): Contribution[] {
  let verdict: Verdict | null = null;
  return contributors.map(({ name, value, from, adds }): Contribution => {
    if (from === undefined) return { name, value: value!, adds: adds!, error: null };
    verdict ??= solveHead(model, { strength: 'when judged' }).result.verdict;
    const judged = verdict.criteria.find(({ criterion }) => criterion === from)!;
    const source = `${from} at site ${judged.site}, case "${judged.case}"`;
    return { name, value: judged.value, error: judged.error, adds: adds ?? 'systematic', from: source };
  });
}

function requireValues({ contributors }: BudgetPlan, { limits }: HeadModel): void {
  contributors.forEach(({ name, value, from, adds }, i) => {
    const path = `contributors.${i}`;
    if ((value === undefined) === (from === undefined))
      throw new Fault(
        'SCHEMA',
        `"${name}" needs either a "value" in mm or "from": "bow" or "flatness"${value === undefined ? '' : ', not both'}. Give one of them.`,
        path,
        { expected: '"value" or "from"' },
      );
    if (value !== undefined && adds === undefined)
      throw new Fault(
        'SCHEMA',
        `"${name}" does not say how it adds up. Write "adds": "systematic" if it is the same way in every head, "independent" if not.`,
        `${path}.adds`,
        { expected: '"systematic" or "independent"' },
      );
    if (from === 'flatness' && limits.flatness === undefined)
      throw new Fault(
        'SCHEMA',
        `"${name}" is taken from the flatness of the head, which is not judged. Give the model "limits.flatness", or take it from the bow.`,
        `${path}.from`,
        { value: from, expected: 'bow' },
      );
  });
}
