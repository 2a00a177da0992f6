import { Fault } from '../../fault/fault.ts';
import type { HeadModel } from '../../model/head-model.ts';
import type { CriterionVerdict } from '../../results/head-result.ts';
import { headsLieFlat } from '../../results/stiffer-heads.ts';
import { type HeadOptions, type HeadRun, releaseStages, solveHead } from '../../solve-head.ts';

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

/** Bow or flatness that fails or is marginal. */
export type OpenCriterion = CriterionVerdict & { readonly criterion: 'bow' | 'flatness' };

/** The head to cure, and of what. */
export interface Trial {
  readonly model: HeadModel;
  readonly run: HeadRun;
  readonly open: readonly OpenCriterion[];
  /** The one that is nearest to its limit, or farthest beyond. */
  readonly now: OpenCriterion;
  readonly factor: NonNullable<HeadOptions['factor']>;
}

/** A changed head to try, and how the change is made of another head. */
export interface Change {
  readonly kind: AdvisedMove['kind'];
  readonly what: string;
  readonly by: number;
  apply(model: HeadModel): HeadModel;
}

/** A change that was solved. */
export type Cure = Change & Pick<AdvisedMove, 'model' | 'value' | 'gain' | 'within'>;

/** A gain below this share of the limit that does not suffice is not worth a word. */
export const LEAST = 0.05;
/** From the least change of a design to the most. */
const ORDER: readonly AdvisedMove['kind'][] = ['fasteners', 'ribs', 'frame', 'thickness', 'together'];

export function isOpen(verdict: CriterionVerdict): verdict is OpenCriterion {
  return (verdict.criterion === 'bow' || verdict.criterion === 'flatness') && verdict.outcome !== 'pass';
}

/** `null` where the change can't be solved, puts a screw head over an edge, or makes another criterion fail. */
export function attempted({ model, run, open, now, factor }: Trial, change: Change): Cure | null {
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

/** Place of a kind between the least change of a design and the most. */
export function rank({ kind }: Pick<Cure, 'kind'>): number {
  return ORDER.indexOf(kind);
}
