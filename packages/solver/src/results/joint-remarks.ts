import { fastenerNames } from '../model/fastener-names.ts';
import type { Limits } from '../model/head-model.ts';
import type { CaseResult, FastenerResult } from './head-result.ts';
import type { JointResult } from './joint.ts';

/**
 * What the engineer should know of preloaded joints before trusting the verdict: those that open, those loaded beyond
 * what they bear, and, where fasteners are judged, those that could not be judged in full.
 */
export function jointRemarks(limits: Limits, cases: readonly CaseResult[]): string[] {
  return [...cases.flatMap(caseRemarks), ...(limits.fastener === undefined ? [] : unjudged(cases[0]))];
}

function caseRemarks({ name, fasteners }: CaseResult): string[] {
  const those = (test: (joint: JointResult) => boolean) =>
    fasteners.filter(({ joint }) => joint !== null && test(joint)).map((fastener) => fastener.name);
  const opening = fasteners.flatMap(({ name: fastener, stiffness, joint }) =>
    joint === null || !joint.opens ? [] : [openRemark(fastener, stiffness, joint, name)],
  );
  const stretched = those(({ proofRatio }) => proofRatio > 1);
  const stripped = those(({ strippingRatio }) => strippingRatio !== null && strippingRatio > 1);
  return [
    ...opening,
    ...(stretched.length === 0
      ? []
      : [`${listed(stretched)} loaded beyond the proof load in case "${name}": the screw stretches for good.`]),
    ...(stripped.length === 0
      ? []
      : [`${listed(stripped)} loaded beyond what the tapped thread bears in case "${name}": it may strip.`]),
  ];
}

function openRemark(name: string, stiffness: number | null, { openStiffness }: JointResult, load: string): string {
  const closed = stiffness === null ? 'rigid' : `${stiffness.toFixed(0)} N/mm`;
  return `The joint of fastener ${name} opens in case "${load}" at the low end of its preload. From then on the screw alone holds, ${openStiffness.toFixed(0)} N/mm instead of ${closed}: the bow and reactions given are those of the closed joint, and the true bow is larger.`;
}

function unjudged({ fasteners }: CaseResult): string[] {
  const names = (test: (fastener: FastenerResult) => boolean) => fasteners.filter(test).map(({ name }) => name);
  const loose = names(({ joint }) => joint === null);
  const unknown = names(({ joint }) => joint?.strippingRatio === null);
  return [
    ...(loose.length === 0 ? [] : [`${listed(loose)} not judged: no preload is given.`]),
    ...(unknown.length === 0
      ? []
      : [
          `${listed(unknown)} not judged for stripping: give "into", a material whose "strength" (0.2 % proof stress) is known.`,
        ]),
  ];
}

function listed(names: readonly string[]): string {
  return `${fastenerNames(names)} ${names.length === 1 ? 'is' : 'are'}`;
}
