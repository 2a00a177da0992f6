import { faultReport } from '../fault/fault.ts';
import { checkHeadModel } from '../model/read.ts';
import { placementSteps } from '../studies/placement/placement-steps.ts';
import { checkPlacementPlan } from '../studies/placement/plan.ts';
import { studyOf } from '../studies/studies.ts';
import { headerLine, rowLine, summaryLine } from '../studies/study-file.ts';
import { variantOfRow } from '../studies/variant-of-row.ts';
import type { OrFault, RowStudyName, StudyOrder, StudyRows, StudyService, StudySummaries } from './study-protocol.ts';

/** Studies as a service: each call is given all it needs, works until it is done, and tells of rows as they are made. */
export const studyService: StudyService = {
  prepare: (order) =>
    orFault(() => {
      if (order.study !== 'placement') return studyFor({ ...order, study: order.study }).total;
      checkPlacementPlan(order.plan);
      return null;
    }),

  rows: (order, indices, tell) =>
    orFault(() => {
      const made: StudyRows[RowStudyName][] = [];
      for (const row of studyFor(order).rows(indices)) {
        made.push(row as StudyRows[RowStudyName]);
        tell(row as StudyRows[RowStudyName]);
      }
      return made;
    }),

  place: ({ model, plan }, tell) =>
    orFault(() => {
      const steps = placementSteps(checkHeadModel(model), checkPlacementPlan(plan));
      const lines: string[] = [];
      for (;;) {
        const next = steps.next();
        if (next.done) {
          lines.push(`${JSON.stringify({ kind: 'summary', ...next.value })}\n`);
          return { summary: next.value, text: lines.join('') };
        }
        if (next.value.kind !== 'progress') lines.push(`${JSON.stringify(next.value)}\n`);
        tell(next.value);
      }
    }),

  summarise: (order, rows, isWhole) =>
    orFault(() => {
      const study = studyFor(order);
      const lines = [headerLine(study, order.model), ...rows.map(rowLine)];
      const summary = (isWhole ? study : studyFor(withoutCrossings(order))).summary(rows);
      return {
        summary: rows.length === 0 ? null : (summary as StudySummaries[RowStudyName]),
        text: [...lines, ...(isWhole ? [summaryLine(summary)] : [])].join(''),
      };
    }),

  variant: ({ study, model, plan }, row) => orFault(() => variantOfRow(study, model, plan, row)),
};

function studyFor({ study, model, plan }: StudyOrder<RowStudyName>) {
  return studyOf(study, checkHeadModel(model), plan);
}

/** Who stops a sweep does not want to wait for what is solved between its rows. */
function withoutCrossings(order: StudyOrder<RowStudyName>): StudyOrder<RowStudyName> {
  const { study, plan } = order;
  const isGrid = study === 'sweep' && typeof plan === 'object' && plan !== null && 'vary' in plan;
  return isGrid ? { ...order, plan: { ...plan, crossings: false } } : order;
}

async function orFault<T>(make: () => T): Promise<OrFault<T>> {
  try {
    return { ok: true, value: make() };
  } catch (thrown) {
    return { ok: false, fault: faultReport(thrown) };
  }
}
