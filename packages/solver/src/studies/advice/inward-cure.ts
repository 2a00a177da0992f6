import type { HeadModel } from '../../model/head-model.ts';
import { moveWords } from '../../results/advice-words.ts';
import type { HeadResult } from '../../results/head-result.ts';
import { type InwardMove, inwardMoves, movedInwards } from '../../results/inward-moves.ts';
import { type Change, type Cure, LEAST, type OpenCriterion, type Trial } from './cure.ts';
import { bestOf } from './least-change.ts';

/** How far fasteners are moved, mm. */
const STEPS = [1, 2, 3, 4, 6, 8, 10, 12, 16, 20];

/** The best way to bring fasteners nearer: the shortest that suffices, else that with most gain. */
export function* bestMove(trial: Trial): Generator<string, Cure | null, void> {
  const { model, run, now } = trial;
  let best: Cure | null = null;
  for (const move of inwardMoves(model, run.stages.plan, placeOf(run.result, now))) {
    const found = yield* bestOf(trial, movesOf(trial, move), false);
    if (found !== null && (best === null || isBetter(found, best, trial))) best = found;
  }
  return best;
}

function movesOf({ model, run }: Trial, move: InwardMove): Change[] {
  const changes: Change[] = [];
  for (const by of STEPS) {
    const fasteners = movedInwards(model, run.stages.plan, move, by);
    if (fasteners === null) break;
    const what = moveWords(model.fasteners, fasteners, move, by);
    changes.push({ kind: 'fasteners', what, by, apply: (head) => ({ ...head, fasteners }) });
  }
  return changes;
}

/** Where a criterion is worst. */
function placeOf({ cases, sites }: HeadResult, { case: name, site, criterion }: OpenCriterion) {
  const bow = criterion === 'bow' ? cases.find((result) => result.name === name)?.bow.at : undefined;
  return bow ?? sites.find((other) => other.name === site)?.centre ?? ([0, 0] as const);
}

/** Of two moves that do not suffice, more fasteners have to gain noticeably more. */
function isBetter(a: Cure, b: Cure, { model, now }: Trial): boolean {
  if (a.within !== b.within) return a.within;
  if (a.within) return travel(a, model) < travel(b, model);
  return a.gain - b.gain > (movedCount(a, model) > movedCount(b, model) ? LEAST * now.limit : 0);
}

/** Ways that the fasteners of a move go, mm. */
function ways(move: Cure, { fasteners }: HeadModel): number[] {
  return move.model.fasteners.map(({ at }, i) => Math.hypot(at[0] - fasteners[i].at[0], at[1] - fasteners[i].at[1]));
}

function travel(move: Cure, model: HeadModel): number {
  return ways(move, model).reduce((sum, way) => sum + way, 0);
}

function movedCount(move: Cure, model: HeadModel): number {
  return ways(move, model).filter((way) => way > 0).length;
}
