import { faultReport } from '../fault/fault.ts';
import { checkHeadModel } from '../model/read.ts';
import { type HeadStages, headSteps } from '../solve-head.ts';
import type { Answer, SolverService } from './protocol.ts';

/**
 * The solver as a service that keeps the stages of its last answer, so that a moved fastener costs a half-solve.
 *
 * Between the steps of a solve it lets waiting messages in; a newer run ends an older one there. One step (mesh and
 * factor of one plate) is the granularity of that.
 *
 * @param breathe resolves once waiting messages have been delivered
 */
export function solverService(breathe: () => Promise<void>): SolverService {
  let latest = -1;
  let stages: HeadStages | null = null;
  return {
    async solve(run, model, quality): Promise<Answer> {
      latest = Math.max(latest, run);
      try {
        const steps = headSteps(checkHeadModel(model), { quality, previous: stages });
        for (;;) {
          await breathe();
          if (run < latest) return { run, kind: 'superseded' };
          const step = steps.next();
          if (!step.done) continue;
          stages = step.value.stages;
          return { run, kind: 'solved', result: step.value.result, quality };
        }
      } catch (thrown) {
        return { run, kind: 'refused', fault: faultReport(thrown) };
      }
    },
  };
}
