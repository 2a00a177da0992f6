import type { Ring } from '../geometry/point.ts';
import type { FactorOptions } from '../linear-algebra/factor.ts';
import { keyOf } from '../plate/key-of.ts';
import type { PlateProblem } from '../plate/plate-problem.ts';
import { type SupportSolve, solveSupport } from '../supports/compliance.ts';
import { equilibrium } from '../supports/equilibrium.ts';
import { type Loading, type LoadRow, loadingOf } from './loading.ts';
import { type Meshed, meshPlate } from './meshed.ts';
import type { Grading } from './plate-domain.ts';
import { isCoupled } from './sections.ts';
import { type PlateSolution, solveCases } from './solution.ts';
import { stopwatch } from './stopwatch.ts';
import { buildStructure, type Structure } from './structure.ts';
import { supportOf } from './support.ts';

/** Cases of one plate: the problems share everything but their loads. */
export interface PlateRequest {
  readonly problems: readonly PlateProblem[];
  /** Rings the mesh follows so that results over them are exact. */
  readonly areas: readonly Ring[];
  /** Element sizes are multiplied by this: 1 as asked. */
  readonly coarsening: number;
  /** Keep the mesh of the stages before when only supports and loads have changed since. */
  readonly keepMesh: boolean;
  /** Whether the plate stretches where it bends in any case, also of other requests on the same mesh. */
  readonly coupled?: boolean;
  /** Element sizes instead of those that follow from the problem; for a request without stages before. */
  readonly grading?: Grading;
  /** Solve on this mesh, made from the same shapes, instead of making one. */
  readonly meshed?: Meshed;
  /** Leave out the residual of each case, a third of the time of a moved support. */
  readonly withoutResidual?: boolean;
  /** Who helps with the factor, and whether it is still wanted. */
  readonly factor?: FactorOptions;
}

/** Everything a solve went through, each stage beside the key of what it was made from. Plain data. */
export interface PlateStages {
  readonly shapeKey: string;
  readonly meshKey: string;
  readonly meshed: Meshed;
  readonly structureKey: string;
  readonly structure: Structure;
  readonly supports: ReadonlyMap<string, SupportSolve>;
  readonly loadings: ReadonlyMap<string, Loading>;
  readonly cases: readonly PlateSolution[];
  /** Milliseconds by stage; a stage that was kept is left out or takes next to none. */
  readonly timings: Readonly<Record<string, number>>;
}

/**
 * Solves the cases, going back only as far as what changed since `previous`: a moved support renews its own half-solve
 * and the small system, a load its own forward solve, a section the numbers but not the mesh, a shape everything.
 *
 * @throws Fault with the path in the plate problem
 */
export function advance(previous: PlateStages | null, request: PlateRequest): PlateStages {
  const { problems, areas, coarsening, keepMesh } = request;
  const [plate] = problems;
  const held = plate.supports ?? [];
  const clock = stopwatch();

  const { coupled = problems.some(isCoupled) } = request;
  const shapeKey = JSON.stringify([shapesOf(plate), areas, coarsening, coupled]);
  // Elements are graded towards the supports, so a mesh made for others is not yet the mesh of this problem.
  const meshKey = JSON.stringify([shapeKey, held.map(({ at, diameter, over }) => [at, diameter, over])]);
  const sameMesh = previous !== null && (keepMesh ? previous.shapeKey === shapeKey : previous.meshKey === meshKey);
  const meshed =
    request.meshed ??
    (sameMesh ? previous.meshed : meshPlate(plate, areas, coarsening, clock, coupled, request.grading));

  const structureKey = JSON.stringify([plate.section, plate.regions, plate.edges, plate.foundations, plate.theory]);
  const kept = previous?.meshed === meshed && previous.structureKey === structureKey ? previous : null;
  const structure = kept?.structure ?? buildStructure(plate, meshed, clock, request.factor);
  const supports = keyed(
    held.map((support, i) => [support, i] as const),
    kept?.supports,
    ([support, i]) => solveSupport(structure.factor, structure.motion, supportOf(structure, support, i)),
  );
  clock.lap('supports');
  const rows = new Map<string, LoadRow>();
  const loadings = keyed(problems, kept?.loadings, (problem) => loadingOf(structure, problem, rows), loadKey);
  clock.lap('loads');
  const system = equilibrium([...supports.values()], structure.motion.count);
  const loaded = problems.map((problem) => loadings.get(loadKey(problem))!);
  const cases = solveCases(structure, system, loaded, !request.withoutResidual);
  clock.lap('cases');
  return {
    shapeKey,
    meshKey: sameMesh ? previous.meshKey : meshKey,
    meshed,
    structureKey,
    structure,
    supports,
    loadings,
    cases,
    timings: clock.laps,
  };
}

/** What the mesh of a problem follows, but for its supports. */
function shapesOf({ outline, openings, regions = [], loads = [], mesh }: PlateProblem) {
  const points = loads.flatMap((load) => ('at' in load ? [load.at] : []));
  return [outline, openings, regions.map(({ shape }) => shape), points, mesh];
}

function loadKey({ loads, temperature }: PlateProblem): string {
  return keyOf([loads, temperature]);
}

/** Made values by the key of what they are made from; a value of `before` with the same key is kept. */
function keyed<S, T>(
  sources: readonly S[],
  before: ReadonlyMap<string, T> | undefined,
  make: (source: S) => T,
  keyOf: (source: S) => string = JSON.stringify,
): ReadonlyMap<string, T> {
  const made = new Map<string, T>();
  for (const source of sources) {
    const key = keyOf(source);
    if (!made.has(key)) made.set(key, before?.get(key) ?? make(source));
  }
  return made;
}
