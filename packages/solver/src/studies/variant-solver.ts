import type { HeadModel } from '../model/head-model.ts';
import type { Verdict } from '../results/head-result.ts';
import { type HeadOptions, type HeadStages, releaseStages, solveHead } from '../solve-head.ts';

/** Solves one variant of a head after another. */
export interface VariantSolver {
  /** @throws Fault when it can't be solved */
  judge(variant: HeadModel): Verdict;
  /** Gives back the memory that is kept for the next variant. */
  end(): void;
}

/** A verdict that leaves nothing out: with the numerical error, and stress where a limit asks for it. */
const THOROUGH: HeadOptions = { quality: 'full', strength: 'when judged' };
/** A verdict without what needs further solves. */
const QUICK: HeadOptions = { quality: 'live' };

/**
 * Each variant on a mesh of its own, taken over from the variant before where that is the very same mesh: then everything
 * that is kept is what would be made again, to the last digit.
 *
 * @param errors estimate the numerical error of each
 */
export function ownMeshSolver(model: HeadModel, errors: boolean): VariantSolver {
  const options = optionsFor(model, errors);
  let last: HeadStages | null = null;
  const end = (): void => {
    if (last !== null) releaseStages(last, null);
    last = null;
  };
  return {
    judge(variant) {
      // A mesh refined for one variant is not the mesh of another.
      if (isRefined(variant)) end();
      const { result, stages } = solveHead(variant, { ...options, keepMesh: false, previous: last });
      if (last !== null) releaseStages(last, stages);
      last = stages;
      return result.verdict;
    },
    end,
  };
}

/**
 * Each variant on the mesh of the model itself while its shapes are the same, even if fasteners stand elsewhere: small
 * differences then are differences of the head, not of the mesh. Where shapes differ, on a mesh of its own.
 */
export function baseMeshSolver(model: HeadModel, errors: boolean): VariantSolver {
  const options = optionsFor(model, errors);
  let base: HeadStages | null = null;
  return {
    judge(variant) {
      base ??= isRefined(model) ? null : solveHead(model, options).stages;
      const { result, stages } = solveHead(variant, { ...options, keepMesh: true, previous: base });
      releaseStages(stages, base);
      return result.verdict;
    },
    end() {
      if (base !== null) releaseStages(base, null);
      base = null;
    },
  };
}

function optionsFor(model: HeadModel, errors: boolean): HeadOptions {
  const { strengthFactor, failureProbability } = model.limits;
  return errors || isRefined(model) || strengthFactor !== undefined || failureProbability !== undefined
    ? THOROUGH
    : QUICK;
}

function isRefined({ mesh }: HeadModel): boolean {
  return mesh !== undefined && 'tolerance' in mesh;
}
