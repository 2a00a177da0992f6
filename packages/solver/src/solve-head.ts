import type { FactorOptions } from './linear-algebra/factor.ts';
import { type CompiledHead, compileHead, type HeadPlan } from './model/compile.ts';
import type { HeadModel, Limits } from './model/head-model.ts';
import { keepOutRemarks } from './model/keep-outs.ts';
import { headCase } from './results/head-case.ts';
import type { CaseResult, HeadResult } from './results/head-result.ts';
import { headStrength } from './results/head-strength.ts';
import { sampleAreas } from './results/sample-areas.ts';
import { strengthRemarks } from './results/strength-remarks.ts';
import { COARSENING } from './results/two-mesh.ts';
import { verdictOf } from './results/verdict.ts';
import { advance, type PlateRequest, type PlateStages } from './structure/stages.ts';

/** What a solve of a head leaves behind for the next one to start from. Plain data; hand it back or drop it. */
export interface HeadStages {
  readonly plan: HeadPlan;
  readonly main: PlateStages;
  readonly coarse: PlateStages | null;
  readonly thin: PlateStages | null;
}

export interface HeadOptions {
  /** `live` keeps the mesh while fasteners move and leaves out second opinions and residuals; `full` if left out. */
  readonly quality?: 'full' | 'live';
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
  const { quality = 'full', previous = null, strength = 'always' } = options;
  const started = performance.now();
  yield 'compile';
  const head = compileHead(model, previous?.plan ?? null);
  const theory = model.theory ?? 'shear';
  const request: PlateRequest = {
    problems: head.problems.map((problem) => ({ ...problem, theory })),
    areas: head.siteArea,
    coarsening: 1,
    keepMesh: quality === 'live',
    withoutResidual: quality === 'live',
    factor: options.factor ?? {},
  };
  yield 'solve';
  const main = advance(previous?.main ?? null, request);
  const measured = (stages: PlateStages, strength: boolean) => measure(model, head, stages, strength);
  const judged = judgesStrength(model.limits);
  const cases = measured(main, quality === 'full' && (judged || strength === 'always'));

  let coarse: PlateStages | null = null;
  let thin: PlateStages | null = null;
  if (quality === 'full') {
    yield 'error estimate';
    coarse = advance(previous?.coarse ?? null, { ...request, coarsening: COARSENING });
    if (theory === 'shear') {
      yield 'thin plate';
      const problems = head.problems.map((problem) => ({ ...problem, theory: 'thin' as const }));
      thin = advance(previous?.thin ?? null, { ...request, problems, meshed: main.meshed });
    }
  }
  yield 'verdict';
  const opinions = {
    coarse: coarse === null ? null : measured(coarse, judged),
    thin: thin === null ? null : measured(thin, false),
  };
  const result: HeadResult = {
    name: model.name,
    mesh: main.structure.mesh,
    sites: head.sites,
    cases,
    verdict: verdictOf(model.limits, cases, opinions, [
      ...keepOutRemarks(model),
      ...lettingGo(cases),
      ...strengthRemarks(model),
    ]),
    dofs: 3 * main.structure.mesh.x.length,
    timings: { ...main.timings, total: performance.now() - started },
  };
  return {
    result,
    stages: { plan: head.plan, main, coarse: coarse ?? previous?.coarse ?? null, thin: thin ?? previous?.thin ?? null },
  };
}

function judgesStrength({ strengthFactor, failureProbability }: Limits): boolean {
  return strengthFactor !== undefined || failureProbability !== undefined;
}

/** One sentence for each fastener that has let go. */
function lettingGo(cases: readonly CaseResult[]): string[] {
  return cases.flatMap((solved) =>
    solved.fasteners
      .filter(({ holds }) => !holds)
      .map(({ name }) => `Fastener ${name} lets go in case "${solved.name}".`),
  );
}

/** From a head model to its verdict in one call. */
export function solveHead(model: HeadModel, options: HeadOptions = {}): HeadRun {
  const steps = headSteps(model, options);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** Gives back the memory of factors that `after` no longer has. `before` is not to be used again. */
export function releaseStages(before: HeadStages, after: HeadStages): void {
  const factors = ({ main, coarse, thin }: HeadStages) =>
    [main, coarse, thin].flatMap((stages) => (stages === null ? [] : [stages.structure.factor]));
  const kept = new Set(factors(after));
  for (const factor of factors(before)) if (!kept.has(factor)) factor.memory.release();
}

function measure(
  model: HeadModel,
  head: CompiledHead,
  { structure, cases }: PlateStages,
  withStrength: boolean,
): CaseResult[] {
  const areas = sampleAreas(
    structure.mesh,
    structure.firstArea,
    head.sites.map((site) => site.name),
  );
  const strength = withStrength ? headStrength(model, head, structure, cases) : cases.map(() => null);
  return cases.map((solved, i) => headCase(model.cases[i].name, head, structure, solved, areas, strength[i]));
}
