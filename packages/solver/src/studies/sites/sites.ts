import { z } from 'zod';
import { Fault } from '../../fault/fault.ts';
import type { Point } from '../../geometry/point.ts';
import { rowLength, sitePitch } from '../../layout/sites.ts';
import { steppingPlan } from '../../layout/stepping-plan.ts';
import type { HeadModel } from '../../model/head-model.ts';
import { checkHeadModel } from '../../model/read.ts';
import { checkSchema } from '../../plate/check-schema.ts';
import { type Judged, judgedFields, judgedOf, orFault } from '../judged.ts';
import { significant } from '../significant.ts';
import { type Study, type StudyOptions, studySteps } from '../study.ts';
import { ownMeshSolver } from '../variant-solver.ts';
import { type Pattern, type SitesPlan, sitesPlanSchema } from './plan.ts';
import { stretched } from './stretch.ts';

const row = z.strictObject({
  index: z.number().int().min(0),
  columns: z.number().int(),
  rows: z.number().int(),
  skip: z.tuple([z.number().int(), z.number().int()]),
  sites: z.number().int(),
  length: z.tuple([z.number(), z.number()]).describe('from the first to the last die of the pattern along x and y, mm'),
  stepping: z
    .strictObject({
      touchdowns: z.number().int(),
      least: z.number().int().describe('fewer touchdowns than this can not do'),
      dies: z.number().int().describe('tested, each once'),
      lost: z.number().int().describe('sites that touch no tested die, over all touchdowns'),
      efficiency: z.number().describe('dies over touchdowns times sites'),
    })
    .optional(),
  ...judgedFields,
});

/** One pattern of a site study. */
export type SitesRow = z.infer<typeof row>;

export interface SitesSummary {
  /** Index of the pattern of fewest touchdowns among those that don't fail, of least bow among equals; null if all fail. */
  readonly fewest: number | null;
}

/**
 * A comparison of site patterns made ready: of each its length, its bow on a head that follows it, and the touchdowns of a
 * plan that steps it over a wafer.
 *
 * @throws Fault for a plan that makes no sense on this model
 */
export function sitesStudy(model: HeadModel, unchecked: unknown): Study<SitesRow, SitesSummary> {
  const plan = checkSchema(sitesPlanSchema, unchecked, 'plan of site patterns');
  const { patterns, errors = false } = plan;
  const die = dieOf(plan, model);
  return {
    kind: 'sites',
    plan,
    total: patterns.length,
    row,
    *rows(indices) {
      const solver = ownMeshSolver(model, errors);
      try {
        for (const index of indices) {
          const { columns, rows, skip } = patterns[index];
          const pattern = { columns, rows, skip, die };
          const size: Point = [rowLength(columns, skip[0], die[0]), rowLength(rows, skip[1], die[1])];
          const stepped = orFault(() => ({ stepping: steppingOf(pattern, plan) }));
          const judged: Judged = orFault(() =>
            judgedOf(solver.judge(checkHeadModel(withPattern(model, patterns[index], die, plan)))),
          );
          yield {
            index,
            columns,
            rows,
            skip,
            sites: columns * rows,
            length: [significant(size[0]), significant(size[1])],
            ...stepped,
            ...judged,
          };
        }
      } finally {
        solver.end();
      }
    },
    summary: (rows) => ({ fewest: fewest(rows) }),
  };
}

/** Runs a site study: yields its patterns and returns the one of fewest touchdowns that does not fail. */
export function sitesSteps(
  model: HeadModel,
  plan: SitesPlan,
  options: StudyOptions = {},
): Generator<SitesRow, SitesSummary, void> {
  return studySteps(sitesStudy(model, plan), options);
}

function dieOf({ die }: SitesPlan, { sites }: HeadModel): Point {
  const known = die ?? sites.die;
  if (known !== undefined) return known;
  throw new Fault(
    'SCHEMA',
    'The model gives the pitch of its sites, not the size of a die. Give "die": [along x, along y] in mm in the plan.',
    'die',
    { expected: '[along x, along y] in mm' },
  );
}

function steppingOf(pattern: Pattern & { die: Point }, { wafer }: SitesPlan): SitesRow['stepping'] {
  const { touchdowns, least, dies, lost } = steppingPlan(pattern, wafer, 'wafer');
  const sites = pattern.columns * pattern.rows;
  return {
    touchdowns: touchdowns.length,
    least,
    dies,
    lost,
    efficiency: significant(dies / (touchdowns.length * sites)),
  };
}

/** The head with another site pattern. */
export function withPattern(
  model: HeadModel,
  { columns, rows, skip }: Pattern,
  die: Point,
  { fit = 'follow', cases }: Pick<SitesPlan, 'fit' | 'cases'>,
): HeadModel {
  const { pitch: _pitch, ...others } = model.sites;
  const sites: HeadModel['sites'] = { ...others, columns, rows, skip: [skip[0], skip[1]], die: [die[0], die[1]] };
  const halves = (pattern: HeadModel['sites']): Point => {
    const pitch = sitePitch(pattern);
    const [x, y] = pattern.probes.field;
    return [((pattern.columns - 1) * pitch[0] + x) / 2, ((pattern.rows - 1) * pitch[1] + y) / 2];
  };
  const fitted = fit === 'keep' ? model : stretched(model, halves(model.sites), halves(sites));
  return { ...fitted, sites, ...(cases && { cases }) };
}

function fewest(rows: readonly SitesRow[]): number | null {
  const able = rows.filter(({ outcome }) => outcome !== undefined && outcome !== 'fail');
  const [best] = able.toSorted(
    (a, b) =>
      (a.stepping?.touchdowns ?? Infinity) - (b.stepping?.touchdowns ?? Infinity) ||
      (a.figures?.bow?.value ?? 0) - (b.figures?.bow?.value ?? 0) ||
      a.index - b.index,
  );
  return best?.stepping === undefined ? null : best.index;
}
