import { type HolePeaks, peakTension } from '../section/hole-concentration.ts';
import { firstPrincipal, vonMises } from './plane-stress.ts';

/** What a plane stress sxx, syy, sxy at `at` comes to, at the edge of a hole where drilled, MPa. */
export type StressMeasure = (stress: Float64Array, at: number, holes: HolePeaks | null) => number;

/** Of brittle materials: the largest tension. */
export const tension: StressMeasure = (stress, at, holes) =>
  holes === null ? firstPrincipal(stress, at) : peakTension(holes, stress[at], stress[at + 1], stress[at + 2]);

/** Of materials that yield: von Mises; at the edge of a hole the stress along it, of either sign. */
export const equivalent: StressMeasure = (stress, at, holes) => {
  if (holes === null) return vonMises(stress, at);
  const [sxx, syy, sxy] = [stress[at], stress[at + 1], stress[at + 2]];
  return Math.max(peakTension(holes, sxx, syy, sxy), peakTension(holes, -sxx, -syy, -sxy));
};
