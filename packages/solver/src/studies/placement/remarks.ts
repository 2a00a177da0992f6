import type { HeadModel } from '../../model/head-model.ts';
import type { HeadField } from './head-field.ts';
import type { PlacementPlan } from './plan.ts';
import type { Verified } from './rows.ts';
import type { TaskResult } from './task.ts';

/** How the best was found and what the search does not see, one sentence each. */
export function searchRemarks(
  model: HeadModel,
  { grounds, always, fixed }: HeadField,
  plan: PlacementPlan,
  result: TaskResult,
  { index, verified }: { readonly index: number; readonly verified: Verified },
): string[] {
  const { isExhaustive, placements, starts, again, step, positions, continuous } = result;
  const grid = `a grid of ${step} mm with ${positions} open positions`;
  const found = isExhaustive
    ? `Best of all ${placements} placements on ${grid} that keep the spacing.`
    : `Best found by a search on ${grid} from ${starts} random starts, ${again} of which ended at the best of them: there may be a better one.`;
  const unseen = unseenLimits(model);
  const { relax } = model.sites.probes;
  return [
    found,
    ...(continuous
      ? ['The best of the grid were then moved off it as long as that helped, each near where it was.']
      : []),
    ...(always.length > fixed || model.fasteners.some(({ acts = 'both' }) => acts !== 'both')
      ? [
          'Seats and fasteners that act one way were let go wherever they would pull: every placement was judged with those that hold.',
        ]
      : []),
    ...(relax
      ? [
          `Probes relax as the head bows: each set of loaded sites was judged with its own stiffness, ${grounds.length} in all.`,
        ]
      : []),
    ...(model.frame?.join === 'bracket'
      ? ['Each placement was judged by the worse end of the screwed joint between frame and body, sliding or bonded.']
      : []),
    ...(unseen.length === 0
      ? []
      : [
          `The search does not see the limits on ${unseen.join(' and ')}; they were judged on ${verified.solved === 1 ? 'the winner' : `the best ${verified.solved} placements`}${index > 0 ? `, and the ${ordinal(index + 1)} best is the first to keep them` : ''}.`,
        ]),
    ...(plan.objective !== 'flatness' && plan.objective !== 'share' && model.limits.flatness !== undefined
      ? ['Only the bow was made small; the objective "share" weighs flatness against its limit too.']
      : []),
  ];
}

function unseenLimits({ limits }: HeadModel): string[] {
  return [
    ...(limits.strengthFactor === undefined ? [] : ['strength']),
    ...(limits.failureProbability === undefined ? [] : ['failure probability']),
  ];
}

function ordinal(n: number): string {
  return `${n}${['th', 'st', 'nd', 'rd'][n] ?? 'th'}`;
}
