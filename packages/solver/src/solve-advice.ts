import { Fault } from './fault/fault.ts';
import type { FactorOptions } from './linear-algebra/factor.ts';
import type { HeadModel } from './model/head-model.ts';
import { micrometres, usedShare } from './results/criteria/criterion.ts';
import type { CriterionVerdict, HeadResult } from './results/head-result.ts';
import { type InwardMove, inwardMoves, movedInwards } from './results/inward-moves.ts';
import { type HeadRun, releaseStages, solveHead } from './solve-head.ts';

/** One change that was solved and gains. */
export interface AdvisedMove {
  readonly kind: 'fasteners' | 'thickness';
  /** What to do and what it gains, in plain words. */
  readonly sentence: string;
  /** The head with the change made. */
  readonly model: HeadModel;
  /** mm that fasteners move, or that the body becomes thicker. */
  readonly by: number;
  /** Value of the criterion then, and how much less that is, mm. */
  readonly value: number;
  readonly gain: number;
  /** Whether it is then inside the limit, with the margin kept in hand and the numerical error of the answer. */
  readonly within: boolean;
}

/** What would bring a head nearer to its limit. */
export interface Advice {
  readonly criterion: 'bow' | 'flatness';
  /** The better one first; none where nothing that was tried helps. */
  readonly moves: readonly AdvisedMove[];
}

/** How far fasteners are moved, mm. */
const STEPS = [1, 2, 3, 4, 6, 8, 10, 12, 16, 20];
/** What the body becomes thicker, mm. */
const THICKER = 0.5;
/** A gain below this share of the value is not worth a word. */
const LEAST = 0.02;

/**
 * Tries what brings a head that fails or is marginal in bow or flatness nearer to its limit: fasteners opposite each
 * other, and all of them, by steps towards the sites, keep-outs respected; and a thicker body. Each is solved as a live
 * answer on the mesh of the run, so gains compare like with like. Stress is not judged.
 *
 * Of the fastener moves that suffice the shortest is advised, else the one that gains most.
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
  const attempt = (changed: HeadModel) => attempted(changed, now, run, factor);
  const worst = placeOf(run.result, now);
  let best: AdvisedMove | null = null;
  for (const move of inwardMoves(model, run.result.sites, worst))
    for (const by of STEPS) {
      const changed = movedInwards(model, run.result.sites, move, by);
      if (changed === null) break;
      yield 'advice';
      const found = attempt(changed);
      if (found === null) continue;
      const advised = { ...found, kind: 'fasteners' as const, by, sentence: moveSentence(model, move, by, found, now) };
      if (best === null || isBetter(advised, best, model)) best = advised;
      if (advised.within) break;
    }
  yield 'advice';
  const thickness = Math.round((model.body.thickness + THICKER) * 1e6) / 1e6;
  const thicker = attempt({ ...model, body: { ...model.body, thickness } });
  const moves: AdvisedMove[] = best === null ? [] : [best];
  if (thicker !== null) {
    const sentence = `A body ${THICKER} mm thicker, ${thickness} mm, ${gains(thicker, now)}.`;
    const advised = { ...thicker, kind: 'thickness' as const, by: THICKER, sentence };
    if (best === null || (advised.within && !best.within)) moves.unshift(advised);
    else moves.push(advised);
  }
  return { criterion: now.criterion, moves };
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
type Attempt = Pick<AdvisedMove, 'model' | 'value' | 'gain' | 'within'>;

function isOpen(verdict: CriterionVerdict): verdict is OpenCriterion {
  return (verdict.criterion === 'bow' || verdict.criterion === 'flatness') && verdict.outcome !== 'pass';
}

/** `null` where the change can't be solved, does not gain, or makes another criterion worse than it may be. */
function attempted(model: HeadModel, now: OpenCriterion, { result, stages }: HeadRun, factor: FactorOptions) {
  let tried: HeadRun;
  try {
    tried = solveHead(model, { quality: 'live', previous: stages, factor });
  } catch (thrown) {
    if (thrown instanceof Fault && thrown.code !== 'CANCELLED') return null;
    throw thrown;
  }
  releaseStages(tried.stages, stages);
  const { criteria } = tried.result.verdict;
  const found = criteria.find(({ criterion }) => criterion === now.criterion);
  const spoils = criteria.some(
    ({ criterion, outcome }) =>
      outcome === 'fail' && result.verdict.criteria.find((other) => other.criterion === criterion)?.outcome !== 'fail',
  );
  if (found === undefined || spoils) return null;
  const gain = now.value - found.value;
  if (gain < LEAST * now.value) return null;
  const within = found.value + (now.error ?? 0) <= now.limit && found.value <= now.limit * (1 - marginOf(model));
  return { model, value: found.value, gain, within };
}

function marginOf({ limits }: HeadModel): number {
  return limits.margin ?? 0;
}

/** Where a criterion is worst. */
function placeOf({ cases, sites }: HeadResult, { case: name, site, criterion }: OpenCriterion) {
  const bow = criterion === 'bow' ? cases.find((result) => result.name === name)?.bow.at : undefined;
  return bow ?? sites.find((other) => other.name === site)?.centre ?? ([0, 0] as const);
}

function isBetter(a: AdvisedMove, b: AdvisedMove, model: HeadModel): boolean {
  if (a.within !== b.within) return a.within;
  return a.within ? travel(a, model) < travel(b, model) : a.gain > b.gain;
}

/** Sum of the ways that the fasteners of a move go, mm. */
function travel(move: AdvisedMove, { fasteners }: HeadModel): number {
  return move.model.fasteners.reduce(
    (sum, { at }, i) => sum + Math.hypot(at[0] - fasteners[i].at[0], at[1] - fasteners[i].at[1]),
    0,
  );
}

function moveSentence(
  { fasteners }: HeadModel,
  { indices, along }: InwardMove,
  by: number,
  found: Attempt,
  now: OpenCriterion,
): string {
  const moved = indices.filter((i) => String(found.model.fasteners[i].at) !== String(fasteners[i].at));
  const names = moved.map((i) => fasteners[i].name);
  const who =
    names.length === fasteners.length && names.length > 2
      ? `all ${names.length} fasteners`
      : `${names.length === 1 ? 'fastener' : 'fasteners'} ${listed(names)}`;
  const way = along === 'sites' ? 'straight towards the sites' : `inwards along ${along}`;
  return `Moving ${who} ${by} mm ${way} ${gains(found, now)}.`;
}

function gains({ gain, within }: Attempt, { value, limit }: OpenCriterion): string {
  if (within) return `gains ${micrometres(gain)}, which is enough`;
  return value > limit
    ? `gains ${micrometres(gain)} of the ${micrometres(value - limit)} needed`
    : `gains ${micrometres(gain)}`;
}

function listed(names: readonly string[]): string {
  return names.length === 1 ? names[0] : `${names.slice(0, -1).join(', ')} and ${names[names.length - 1]}`;
}
