import { fastenerNames } from '../model/fastener-names.ts';
import type { Fastener, HeadModel } from '../model/head-model.ts';
import type { CaseResult } from './head-result.ts';

/** Share of what the fasteners carry together in the case that loads them most, below which a push is not worth a word; our choice. */
const SMALL = 0.02;

/**
 * One sentence where fasteners push the head off the board, as those do that a head levers over its others. A fastener acts
 * both ways unless the model says otherwise; a screw only pulls, so that something must carry the head there. Those with a
 * preload are left out: there the clamped parts carry it.
 */
export function pushingRemarks({ fasteners }: HeadModel, cases: readonly CaseResult[]): string[] {
  const carried = cases.map(({ fasteners: held }) => held.reduce((sum, { reaction }) => sum + Math.abs(reaction), 0));
  const least = SMALL * Math.max(...carried);
  const pushes = cases.flatMap(({ name, fasteners: held }) =>
    held.flatMap(({ name: fastener, reaction }, i) =>
      isLeftOpen(fasteners[i]) && reaction > least ? [{ fastener, force: reaction, case: name }] : [],
    ),
  );
  if (pushes.length === 0) return [];
  const names = [...new Set(pushes.map(({ fastener }) => fastener))];
  const most = pushes.reduce((a, b) => (b.force > a.force ? b : a));
  const [push, they, them] = names.length === 1 ? ['pushes', 'it acts', 'it'] : ['push', 'they act', 'them'];
  const who = names.length === 1 ? '' : `, ${most.fastener} the most`;
  return [
    `${fastenerNames(names)} ${push} the head off the board, with up to ${newtons(most.force)} in case "${most.case}"${who}. As modelled ${they} both ways. A screw only pulls: if nothing else carries the head there, set "acts" of ${them} to "pull".`,
  ];
}

function isLeftOpen({ acts, preload, torque }: Fastener): boolean {
  return acts === undefined && preload === undefined && torque === undefined;
}

function newtons(force: number): string {
  return `${force >= 100 ? force.toFixed(0) : force.toFixed(1)} N`;
}
