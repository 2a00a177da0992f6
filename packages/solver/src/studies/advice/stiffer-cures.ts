import { type StifferSeries, stifferHeads } from '../../results/stiffer-heads.ts';
import type { Cure, Trial } from './cure.ts';
import { bestOf } from './least-change.ts';

/** Ribs, frame and body, of each the least that suffices, else the most. */
export function* bestOfEachKind(trial: Trial): Generator<string, Cure[], void> {
  const best = new Map<StifferSeries['kind'], Cure>();
  for (const { kind, steps } of stifferHeads(trial.model, trial.run.stages.plan)) {
    const before = best.get(kind);
    if (before?.within) continue;
    const changes = steps.map((step) => ({ ...step, kind }));
    const found = yield* bestOf(trial, changes, true);
    if (found !== null && (before === undefined || found.within || found.gain > before.gain)) best.set(kind, found);
  }
  return [...best.values()];
}
