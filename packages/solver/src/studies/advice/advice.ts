import type { HeadModel } from '../../model/head-model.ts';
import { conclusionOf, sentenceOf } from '../../results/advice-words.ts';
import { usedShare } from '../../results/criteria/criterion.ts';
import type { HeadOptions, HeadRun } from '../../solve-head.ts';
import { type AdvisedMove, type Cure, isOpen, LEAST, rank, type Trial } from './cure.ts';
import { bestTogether } from './cures-together.ts';
import { bestMove } from './inward-cure.ts';
import { bestOfEachKind } from './stiffer-cures.ts';

/** What would bring a head nearer to its limit. */
export interface Advice {
  readonly criterion: 'bow' | 'flatness';
  /** Those that suffice first, the least change of them at the front; then the others, the most gain at the front. */
  readonly moves: readonly AdvisedMove[];
  /** Said where nothing that was tried suffices; `null` where something does. */
  readonly conclusion: string | null;
}

/**
 * Tries what brings a head that fails or is marginal in bow or flatness nearer to its limit: fasteners nearer to the
 * sites, each mirror set as one; ribs between the sites; a thicker frame, or one; a thicker body; and several of them
 * together where none suffices. Keep-outs and the room of screw heads are respected.
 *
 * Each is solved as a live answer, that with moved fasteners on the mesh of the run; stress is not judged. Of each kind
 * the least that suffices is advised, else what gains most. A gain below 5 % of the limit is left out
 * unless it suffices.
 *
 * Yields before each solve, so that a caller can stop there.
 *
 * @param run the full answer of the model
 * @returns `null` for a head that passes in both
 */
export function* adviceSteps(
  model: HeadModel,
  run: HeadRun,
  factor: HeadOptions['factor'] = {},
): Generator<string, Advice | null, void> {
  const open = run.result.verdict.criteria.filter(isOpen);
  if (open.length === 0) return null;
  const now = open.reduce((a, b) => (usedShare(b) > usedShare(a) ? b : a));
  const trial: Trial = { model, run, open, now, factor };
  const cures = [yield* bestMove(trial), ...(yield* bestOfEachKind(trial))].filter(
    (cure) => cure !== null && (cure.within || cure.gain >= LEAST * now.limit),
  ) as Cure[];
  if (cures.length > 1 && !cures.some(({ within }) => within)) {
    const together = yield* bestTogether(trial, cures);
    if (together !== null) cures.push(together);
  }
  const moves = cures.toSorted(inOrder).map((cure): AdvisedMove => {
    const { kind, by, model: changed, value, gain, within } = cure;
    return { kind, sentence: sentenceOf(cure, now), model: changed, by, value, gain, within };
  });
  return { criterion: now.criterion, moves, conclusion: conclusionOf(moves, now, LEAST) };
}

/** The same in one call. */
export function adviseHead(model: HeadModel, run: HeadRun): Advice | null {
  const steps = adviceSteps(model, run);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

function inOrder(a: Cure, b: Cure): number {
  if (a.within !== b.within) return a.within ? -1 : 1;
  return a.within ? rank(a) - rank(b) : b.gain - a.gain;
}
