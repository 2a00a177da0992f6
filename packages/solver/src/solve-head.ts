import type { FactorOptions } from './linear-algebra/factor.ts';
import { type CompiledHead, compileHead, type HeadPlan } from './model/compile.ts';
import { drilledRemarks } from './model/drilled-remarks.ts';
import type { HeadModel } from './model/head-model.ts';
import { keepOutRemarks } from './model/keep-outs.ts';
import { headCase } from './results/head-case.ts';
import { headGoals, unsettled } from './results/head-goals.ts';
import type { CaseResult, HeadResult } from './results/head-result.ts';
import { refineFor } from './results/refine-for.ts';
import { type SampleArea, sampleAreas } from './results/sample-areas.ts';
import { COARSENING } from './results/two-mesh.ts';
import { verdictOf } from './results/verdict.ts';
import { advance, type PlateRequest, type PlateStages } from './structure/stages.ts';

/** Rounds of refinement towards `mesh.tolerance`. */
const ROUNDS = 6;

/** What a solve of a head leaves behind for the next one to start from. Plain data; hand it back or drop it. */
export interface HeadStages {
  readonly plan: HeadPlan;
  readonly main: PlateStages;
  readonly coarse: PlateStages | null;
  readonly thin: PlateStages | null;
  /** What results are measured on in the mesh of `main`, one for each site. */
  readonly areas: readonly SampleArea[];
}

export interface HeadOptions {
  /** `live` keeps the mesh while fasteners move and leaves out second opinions and residuals; `full` if left out. */
  readonly quality?: 'full' | 'live';
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
  const { quality = 'full', previous = null } = options;
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
    keepMesh: quality === 'live',
    withoutResidual: quality === 'live',
    factor: options.factor ?? {},
  };
  const names = model.cases.map(({ name }) => name);
  yield 'solve';
  let main = advance(before?.main ?? null, request);
  let areas = before?.main.meshed === main.meshed ? before.areas : siteAreas(head, main);
  let cases = measure(names, head, main, areas);

  let coarse: PlateStages | null = null;
  let coarseCases: CaseResult[] | null = null;
  let thin: PlateStages | null = null;
  let thinCases: CaseResult[] | null = null;
  if (quality === 'full') {
    yield 'error estimate';
    const coarser = { ...request, coarsening: COARSENING };
    coarse = advance(before?.coarse ?? null, coarser);
    coarseCases = measure(names, head, coarse, siteAreas(head, coarse));
    for (let round = 1; round <= ROUNDS; round++) {
      const { criteria } = verdictOf(model.limits, cases, { coarse: coarseCases, thin: null }, []);
      const open = unsettled(criteria, tolerance);
      if (open.length === 0) break;
      yield `refine ${round}`;
      const { grading, isLast } = refineFor(main, headGoals(main, cases, areas, open, tolerance));
      for (const stages of [main, coarse])
        if (stages !== before?.main && stages !== before?.coarse) stages.structure.factor.memory.release();
      main = advance(null, { ...request, grading });
      areas = siteAreas(head, main);
      cases = measure(names, head, main, areas);
      coarse = advance(null, { ...coarser, grading });
      coarseCases = measure(names, head, coarse, siteAreas(head, coarse));
      if (isLast) break;
    }
    if (theory === 'shear') {
      yield 'thin plate';
      const problems = head.problems.map((problem) => ({ ...problem, theory: 'thin' as const }));
      thin = advance(before?.thin ?? null, { ...request, problems, meshed: main.meshed });
      thinCases = measure(names, head, thin, areas);
    }
  }
  yield 'verdict';
  const opinions = { coarse: coarseCases, thin: thinCases };
  const result: HeadResult = {
    name: model.name,
    mesh: main.structure.mesh,
    sites: head.sites,
    cases,
    verdict: verdictOf(model.limits, cases, opinions, [
      ...keepOutRemarks(model),
      ...drilledRemarks(model),
      ...lettingGo(cases),
    ]),
    dofs: 3 * main.structure.mesh.x.length,
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
    },
  };
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

function siteAreas(head: CompiledHead, { structure }: PlateStages): SampleArea[] {
  return sampleAreas(
    structure.mesh,
    structure.firstArea,
    head.sites.map((site) => site.name),
  );
}

function measure(
  names: readonly string[],
  head: CompiledHead,
  { structure, cases }: PlateStages,
  areas: readonly SampleArea[],
): CaseResult[] {
  return cases.map((solved, i) => headCase(names[i], head, structure, solved, areas));
}
