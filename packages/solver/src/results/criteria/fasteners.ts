import type { FastenerResult } from '../head-result.ts';
import type { Criterion, Reading } from './criterion.ts';

/** Fasteners within this of the worst share it, and the first gives its name: see the bow. */
const TIE = 1e-3;

/** What each mode is the share of, in words. */
const WORDS: Readonly<Record<string, string>> = {
  proof: 'of the proof load of its screw',
  stripping: 'of what strips its tapped thread',
  clamp: 'of its clamp force',
};

/** Worst use of proof load, tapped thread and clamp force over the fasteners that have a preload. */
export const fasteners: Criterion = {
  criterion: 'fasteners',
  unit: '1',
  bound: 'most',
  limit: (limits) => limits.fastener,
  read: (result) => {
    const readings = result.fasteners.flatMap(readingsOf);
    if (readings.length === 0) return null;
    const worst = Math.max(...readings.map(({ value }) => value));
    return { ...readings.find(({ value }) => value >= (1 - TIE) * worst)!, value: worst };
  },
  sentence: ({ value, limit, site, case: name, mode = 'proof' }) =>
    `Fastener ${site} ${mode === 'clamp' ? 'loses' : 'uses'} ${percent(value)} ${WORDS[mode]} in case "${name}", ${percent(Math.abs(value - limit))} ${value > limit ? 'over' : 'inside'} the ${percent(limit)} limit.`,
};

/** What a fastener uses of each of its limits; nothing without a preload. */
export function readingsOf({ name, joint }: Pick<FastenerResult, 'name' | 'joint'>): Reading[] {
  if (joint === null) return [];
  const { proofRatio, strippingRatio, clampLoss } = joint;
  return [
    { value: proofRatio, site: name, mode: 'proof' },
    ...(strippingRatio === null ? [] : [{ value: strippingRatio, site: name, mode: 'stripping' }]),
    { value: clampLoss, site: name, mode: 'clamp' },
  ];
}

function percent(share: number): string {
  return `${(100 * share).toFixed(Math.abs(share) < 0.1 ? 1 : 0)} %`;
}
