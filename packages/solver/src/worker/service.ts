import { Fault, faultReport } from '../fault/fault.ts';
import type { Crew } from '../linear-algebra/crew.ts';
import type { HeadModel } from '../model/head-model.ts';
import { checkHeadModel } from '../model/read.ts';
import { type HeadRun, headSteps, releaseStages } from '../solve-head.ts';
import { adviceSteps } from '../studies/advice/advice.ts';
import type { Answer, SolverService } from './protocol.ts';

/**
 * The solver as a service that keeps the stages of its last answer, so that a moved fastener costs a half-solve.
 *
 * Between the steps of a solve it lets waiting messages in; a newer run ends an older one there. Where memory can be
 * shared it also looks between the tasks of a factorisation whether a newer run is meant.
 *
 * @param breathe resolves once waiting messages have been delivered
 * @param crew helpers on other threads
 */
export function solverService(breathe: () => Promise<void>, crew: Crew | null = null): SolverService {
  let latest = -1;
  let last: (HeadRun & { readonly run: number; readonly model: HeadModel; readonly full: boolean }) | null = null;
  return {
    async solve(run, model, quality, newest = null): Promise<Answer> {
      latest = Math.max(latest, run);
      try {
        const checked = checkHeadModel(model);
        const steps = headSteps(checked, {
          quality,
          previous: last?.stages ?? null,
          factor: { crew, stopped: () => newest !== null && Atomics.load(newest, 0) > run },
        });
        for (;;) {
          await breathe();
          if (run < latest) return { run, kind: 'superseded' };
          const step = steps.next();
          if (!step.done) continue;
          if (last !== null) releaseStages(last.stages, step.value.stages);
          last = { ...step.value, run, model: checked, full: quality === 'full' };
          return { run, kind: 'solved', result: step.value.result, quality };
        }
      } catch (thrown) {
        if (thrown instanceof Fault && thrown.code === 'CANCELLED') return { run, kind: 'superseded' };
        return { run, kind: 'refused', fault: faultReport(thrown) };
      }
    },
    async advise(run, newest = null) {
      if (last === null || last.run !== run || !last.full) return null;
      const stopped = () => newest !== null && Atomics.load(newest, 0) > run;
      try {
        const steps = adviceSteps(last.model, last, { crew, stopped });
        for (;;) {
          await breathe();
          if (run < latest || stopped()) return null;
          const step = steps.next();
          if (step.done) return step.value;
        }
      } catch (thrown) {
        if (thrown instanceof Fault && thrown.code === 'CANCELLED') return null;
        throw thrown;
      }
    },
  };
}
