import { Fault } from './fault/fault.ts';
import type { FactorOptions } from './linear-algebra/factor.ts';
import type { HeadModel } from './model/head-model.ts';
import { conclusionOf, moveWords, sentenceOf, togetherWords } from './results/advice-words.ts';
import { usedShare } from './results/criteria/criterion.ts';
import type { CriterionVerdict, HeadResult } from './results/head-result.ts';
import { type InwardMove, inwardMoves, movedInwards } from './results/inward-moves.ts';
import { headsLieFlat, type StifferSeries, stifferHeads } from './results/stiffer-heads.ts';
import { type HeadRun, releaseStages, solveHead } from './solve-head.ts';

/** One change that was solved and gains. */
export interface AdvisedMove {
  /** `thickness`: of the body; `frame`: of the frame, or one where there is none; `together`: several of the others. */
  readonly kind: 'fasteners' | 'ribs' | 'thickness' | 'frame' | 'together';
  /** What to do and what it gains, in plain words. */
  readonly sentence: string;
  /** The head with the change made. */
  readonly model: HeadModel;
  /** mm that fasteners move, ribs are wide, or body or frame become thicker; of the first of several together. */
  readonly by: number;
  /** Value of the criterion then, and how much less that is, mm. */
  readonly value: number;
  readonly gain: number;
  /** Whether bow and flatness are then inside their limits, with the margin kept in hand and the numerical error. */
  readonly within: boolean;
}

/** What would bring a head nearer to its limit. */
export interface Advice {
  readonly criterion: 'bow' | 'flatness';
  /** Those that suffice first, the least change of them at the front; then the others, the most gain at the front. */
  readonly moves: readonly AdvisedMove[];
  /** Said where nothing that was tried suffices; `null` where something does. */
  readonly conclusion: string | null;
}

/** How far fasteners are moved, mm. */
const STEPS = [1, 2, 3, 4, 6, 8, 10, 12, 16, 20];
/** A gain below this share of the limit that does not suffice is not worth a word. */
const LEAST = 0.05;
/** From the least change of a design to the most. */
const ORDER: readonly AdvisedMove['kind'][] = ['fasteners', 'ribs', 'frame', 'thickness', 'together'];

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
  factor: FactorOptions = {},
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

type OpenCriterion = CriterionVerdict & { readonly criterion: Advice['criterion'] };

interface Trial {
  readonly model: HeadModel;
  readonly run: HeadRun;
  readonly open: readonly OpenCriterion[];
  /** The one that is nearest to its limit, or farthest beyond. */
  readonly now: OpenCriterion;
  readonly factor: FactorOptions;
}

/** A changed head to try, and how the change is made of another head. */
interface Change {
  readonly kind: AdvisedMove['kind'];
  readonly what: string;
  readonly by: number;
  apply(model: HeadModel): HeadModel;
}

type Cure = Change & Pick<AdvisedMove, 'model' | 'value' | 'gain' | 'within'>;

function isOpen(verdict: CriterionVerdict): verdict is OpenCriterion {
  return (verdict.criterion === 'bow' || verdict.criterion === 'flatness') && verdict.outcome !== 'pass';
}

/** The best way to bring fasteners nearer: the shortest that suffices, else that with most gain. */
function* bestMove(trial: Trial): Generator<string, Cure | null, void> {
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

/** Ribs, frame and body, of each the least that suffices, else the most. */
function* bestOfEachKind(trial: Trial): Generator<string, Cure[], void> {
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

/**
 * Of changes from little to much, the least that suffices, else that with most gain.
 *
 * @param grows more of it gains more; else the way back from the last is tried as long as that gains
 */
function* bestOf(trial: Trial, changes: readonly Change[], grows: boolean): Generator<string, Cure | null, void> {
  const solved = new Map<number, Cure | null>();
  const at = function* (i: number): Generator<string, Cure | null, void> {
    if (!solved.has(i)) {
      yield 'advice';
      solved.set(i, attempted(trial, changes[i]));
    }
    return solved.get(i) ?? null;
  };
  let top = changes.length - 1;
  for (; top >= 0; top--) {
    const here = yield* at(top);
    if (here === null && top > 0) continue;
    if (here === null || here.within || grows || top === 0) break;
    const less = yield* at(top - 1);
    if (less === null || less.gain <= here.gain) break;
  }
  if (top < 0) return null;
  if (!(yield* at(top))?.within) return yield* at(top);
  let short = -1;
  while (top - short > 1) {
    const middle = Math.floor((top + short) / 2);
    if ((yield* at(middle))?.within) top = middle;
    else short = middle;
  }
  return yield* at(top);
}

/** Several cures in one head: fasteners and ribs, the two with most gain, the three, and all; the first that suffices. */
function* bestTogether(trial: Trial, cures: readonly Cure[]): Generator<string, Cure | null, void> {
  const byGain = cures.toSorted((a, b) => b.gain - a.gain);
  const plain = cures.filter(({ kind }) => kind === 'fasteners' || kind === 'ribs');
  const sets = [plain, byGain.slice(0, 2), byGain.slice(0, 3), byGain].filter((set) => set.length > 1);
  const distinct = sets.filter((set, i) => sets.findIndex((other) => alike(other, set)) === i);
  let best: Cure | null = null;
  for (const set of distinct) {
    yield 'advice';
    const found = attempted(trial, {
      kind: 'together',
      what: togetherWords(set.toSorted((a, b) => rank(a) - rank(b))),
      by: set[0].by,
      // The frame becomes thicker before ribs are added that follow it.
      apply: (head) => set.toSorted((a, b) => rank(b) - rank(a)).reduce((sum, cure) => cure.apply(sum), head),
    });
    if (found === null) continue;
    if (best === null || found.within || found.gain > best.gain) best = found;
    if (found.within) break;
  }
  return best;
}

function alike(a: readonly Cure[], b: readonly Cure[]): boolean {
  return a.length === b.length && a.every((cure) => b.includes(cure));
}

/** `null` where the change can't be solved, puts a screw head over an edge, or makes another criterion fail. */
function attempted({ model, run, open, now, factor }: Trial, change: Change): Cure | null {
  const changed = change.apply(model);
  let tried: HeadRun;
  try {
    tried = solveHead(changed, { quality: 'live', previous: run.stages, factor });
  } catch (thrown) {
    if (thrown instanceof Fault && thrown.code !== 'CANCELLED') return null;
    throw thrown;
  }
  releaseStages(tried.stages, run.stages);
  const { criteria } = tried.result.verdict;
  const then = (before: CriterionVerdict) => criteria.find(({ criterion }) => criterion === before.criterion);
  const found = then(now);
  const fails = (verdicts: readonly CriterionVerdict[], name: string): boolean =>
    verdicts.some(({ criterion, outcome }) => criterion === name && outcome === 'fail');
  const spoils = criteria.some(
    ({ criterion }) => fails(criteria, criterion) && !fails(run.result.verdict.criteria, criterion),
  );
  if (found === undefined || spoils || !headsLieFlat(changed, run.stages.plan, tried.stages.plan)) return null;
  const within = open.every((before) => {
    const value = then(before)?.value ?? Infinity;
    return value + (before.error ?? 0) <= before.limit && value <= before.limit * (1 - (model.limits.margin ?? 0));
  });
  return { ...change, model: changed, value: found.value, gain: now.value - found.value, within };
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

function rank({ kind }: Pick<Cure, 'kind'>): number {
  return ORDER.indexOf(kind);
}

function inOrder(a: Cure, b: Cure): number {
  if (a.within !== b.within) return a.within ? -1 : 1;
  return a.within ? rank(a) - rank(b) : b.gain - a.gain;
}
