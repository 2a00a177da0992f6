import type { Factor, FactorOptions } from './linear-algebra/factor.ts';
import { heightRemarks } from './model/board-heights.ts';
import { compileHead, type HeadPlan } from './model/compile.ts';
import { drilledRemarks } from './model/drilled-remarks.ts';
import { edgeRemarks } from './model/edge-remarks.ts';
import type { HeadModel, Limits } from './model/head-model.ts';
import { keepOutRemarks } from './model/keep-outs.ts';
import { refineHead } from './refine-head.ts';
import { bracketed } from './results/bracket.ts';
import { lettingGo, losingContact, slidingOnBoard } from './results/case-remarks.ts';
import type { HeadResult } from './results/head-result.ts';
import { jointRemarks } from './results/joint-remarks.ts';
import { coarseOpinion, measuredCases, siteAreas } from './results/measured-cases.ts';
import { pushingRemarks } from './results/pushing-remarks.ts';
import type { SampleArea } from './results/sample-areas.ts';
import { sharpCornerRemarks } from './results/sharp-corner-remarks.ts';
import { strengthRemarks } from './results/strength-remarks.ts';
import { COARSENING } from './results/two-mesh.ts';
import { verdictOf } from './results/verdict.ts';
import { advanceGroups, factorsOf, meshedOf, type PlateGroups } from './structure/groups.ts';
import type { PlateRequest } from './structure/stages.ts';
import { unknownsOf } from './structure/structure.ts';

/** What a solve of a head leaves behind for the next one to start from. Plain data; hand it back or drop it. */
export interface HeadStages {
  readonly plan: HeadPlan;
  readonly main: PlateGroups;
  readonly coarse: PlateGroups | null;
  readonly thin: PlateGroups | null;
  /** What results are measured on in the mesh of `main`, one for each site. */
  readonly areas: readonly SampleArea[];
  /** The other end of a bracketed joint: the frame bonded, where those above have it sliding. */
  readonly bonded: HeadStages | null;
}

export interface HeadOptions {
  /** `live` keeps the mesh while fasteners move and leaves out second opinions and residuals; `full` if left out. */
  readonly quality?: 'full' | 'live';
  /** Keep the mesh of the run before while fasteners move; as `quality` says if left out. */
  readonly keepMesh?: boolean;
  /** `when judged` leaves stress out of full answers unless a limit asks for it; `always` if left out. */
  readonly strength?: 'always' | 'when judged';
  /** Stages of the run before. */
  readonly previous?: HeadStages | null;
  /** Who helps with the factors, and whether they are still wanted. */
  readonly factor?: FactorOptions;
}

export interface HeadRun {
  readonly result: HeadResult;
  readonly stages: HeadStages;
}

/**
 * From a head model to its verdict: compile, solve every case, measure, judge.
 *
 * Written as a generator that yields the name of each step before it runs, so that a caller can show progress or stop
 * between steps; {@link solveHead} runs it through.
 *
 * @throws Fault with the path in the model for anything that can't be solved as asked
 */
export function* headSteps(model: HeadModel, options: HeadOptions = {}): Generator<string, HeadRun, void> {
  const { frame } = model;
  if (frame?.join !== 'bracket') return yield* oneJoint(model, options);
  const sliding = yield* oneJoint({ ...model, frame: { ...frame, join: 'sliding' } }, options);
  const previous = options.previous?.bonded ?? null;
  const bonded = yield* oneJoint({ ...model, frame: { ...frame, join: 'bonded' } }, { ...options, previous });
  return {
    result: bracketed(sliding.result, bonded.result),
    stages: { ...sliding.stages, bonded: bonded.stages },
  };
}

function* oneJoint(model: HeadModel, options: HeadOptions): Generator<string, HeadRun, void> {
  const { quality = 'full', previous = null, strength = 'always' } = options;
  const started = performance.now();
  yield 'compile';
  const head = compileHead(model, previous?.plan ?? null);
  const { tolerance } = head.plan;
  // Stages refined to another tolerance are no start.
  const before = previous?.plan.tolerance === tolerance ? previous : null;
  const theory = model.theory ?? 'shear';
  const request: PlateRequest = {
    problems: head.problems.map((problem) => ({ ...problem, theory })),
    areas: head.siteArea,
    coarsening: 1,
    keepMesh: options.keepMesh ?? quality === 'live',
    withoutResidual: quality === 'live',
    factor: options.factor ?? {},
  };
  yield 'solve';
  let main = advanceGroups(before?.main ?? null, request);
  let coarse: PlateGroups | null = null;
  let thin: PlateGroups | null = null;
  if (quality === 'full') {
    yield 'error estimate';
    coarse = advanceGroups(before?.coarse ?? null, { ...request, coarsening: COARSENING });
    ({ main, coarse } = yield* refineHead(model, head, request, { main, coarse }, before));
    if (theory === 'shear') {
      yield 'thin plate';
      const problems = head.problems.map((problem) => ({ ...problem, theory: 'thin' as const }));
      thin = advanceGroups(before?.thin ?? null, { ...request, problems, meshed: meshedOf(main) });
    }
  }
  yield 'verdict';
  const meshed = meshedOf(main);
  const areas = before !== null && meshedOf(before.main) === meshed ? before.areas : siteAreas(head, main);
  const judged = judgesStrength(model.limits);
  const withStrength = quality === 'full' && (judged || strength === 'always');
  const measured = measuredCases(model, head, main, areas, withStrength);
  const cases = head.cases.map((_, i) => measured(i));
  const opinions = {
    coarse: coarse && coarseOpinion(model, head, main, cases, areas, coarse, judged),
    thin: thin && measuredCases(model, head, thin, areas, false),
  };
  const result: HeadResult = {
    name: model.name,
    mesh: meshed.mesh,
    sites: head.sites,
    cases,
    verdict: verdictOf(model.limits, cases, opinions, [
      ...keepOutRemarks(model),
      ...drilledRemarks(model),
      ...heightRemarks(model),
      ...edgeRemarks(model, head),
      ...lettingGo(cases),
      ...pushingRemarks(model, cases),
      ...losingContact(model, cases),
      ...slidingOnBoard(model),
      ...jointRemarks(model.limits, cases),
      ...strengthRemarks(model),
      ...sharpCornerRemarks(model),
    ]),
    dofs: unknownsOf(meshed),
    timings: { ...main.timings, total: performance.now() - started },
  };
  return {
    result,
    stages: {
      plan: head.plan,
      main,
      coarse: coarse ?? before?.coarse ?? null,
      thin: thin ?? before?.thin ?? null,
      areas,
      bonded: null,
    },
  };
}

function judgesStrength({ strengthFactor, failureProbability }: Limits): boolean {
  return strengthFactor !== undefined || failureProbability !== undefined;
}

/** From a head model to its verdict in one call. */
export function solveHead(model: HeadModel, options: HeadOptions = {}): HeadRun {
  const steps = headSteps(model, options);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** Gives back the memory of factors that `after` no longer has, all of it without one. `before` is not to be used again. */
export function releaseStages(before: HeadStages, after: HeadStages | null): void {
  const factors = ({ main, coarse, thin, bonded }: HeadStages): Factor[] => [
    ...[main, coarse, thin].flatMap((solved) => (solved === null ? [] : factorsOf(solved))),
    ...(bonded === null ? [] : factors(bonded)),
  ];
  const kept = new Set(after === null ? [] : factors(after));
  for (const factor of factors(before)) if (!kept.has(factor)) factor.memory.release();
}
