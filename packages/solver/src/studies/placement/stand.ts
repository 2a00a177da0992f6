import type { Point } from '../../geometry/point.ts';
import type { Joint } from '../../model/joint.ts';
import type { HeadLoadCase } from '../../model/load-cases.ts';
import type { PlateSupport } from '../../plate/plate-problem.ts';
import type { SampleArea } from '../../results/sample-areas.ts';
import { atNodes, complianceOf, loadField, seen, supportAt, unitField } from '../../structure/flexibility.ts';
import type { Loading } from '../../structure/loading.ts';
import type { Structure } from '../../structure/structure.ts';
import type { SupportSolve } from '../../supports/compliance.ts';

/** Something that may hold the plate at one place. */
export interface Place {
  readonly at: Point;
  readonly support: PlateSupport;
  /** Of a preloaded fastener; `null` otherwise. */
  readonly joint: Joint | null;
}

/** A load case on the grounded plate. */
export interface GroundCase {
  readonly name: string;
  /** `null` on a plate problem. */
  readonly load: HeadLoadCase | null;
  readonly loading: Loading;
  /** Deflection of the grounded plate, local axes. */
  readonly field: Float64Array;
  /** The same at the measured nodes, global axes. */
  readonly at: Float64Array;
}

/** A grounded plate with its load cases, and the nodes that results are measured at. */
export interface Ground {
  /** What sets it apart from others of the same head, such as `bonded`; empty when there is nothing. */
  readonly label: string;
  readonly structure: Structure;
  readonly areas: readonly SampleArea[];
  /** Ascending. */
  readonly nodes: Uint32Array;
  /** Free rigid motions at those nodes. */
  readonly motions: readonly Float64Array[];
  readonly cases: readonly GroundCase[];
}

/** A place with all that the grounded factor has to say about it, but for its compliance with others. */
export interface Column {
  readonly place: Place;
  readonly solve: SupportSolve;
  /** Deflection under a unit force there at the measured nodes, mm/N. */
  readonly at: Float64Array;
  /** Deflection there under each load case of the grounded plate, mm. */
  readonly seat: Float64Array;
}

/** A ground with places to hold it at. The first `always` hold in every placement: fixed fasteners, then cells of seats. */
export interface Stand {
  readonly ground: Ground;
  readonly columns: readonly Column[];
  /** `[nColumns]` rows of `G = C K^-1 C^T`, mm/N. */
  readonly compliance: readonly Float64Array[];
  readonly fixed: number;
  readonly always: number;
}

/** @param areas measured, or `null` for all nodes */
export function groundOf(
  label: string,
  structure: Structure,
  areas: readonly SampleArea[] | null,
  cases: readonly Pick<GroundCase, 'name' | 'load' | 'loading'>[],
): Ground {
  const nodes =
    areas === null
      ? Uint32Array.from(structure.mesh.x.keys())
      : Uint32Array.from(new Set(areas.flatMap((area) => [...area.nodes]))).sort();
  return {
    label,
    structure,
    areas: areas ?? [],
    nodes,
    motions: structure.motion.fields.map((field) => atNodes(structure, field, nodes)),
    cases: cases.map((load) => {
      const field = loadField(structure, load.loading);
      return { ...load, field, at: atNodes(structure, field, nodes) };
    }),
  };
}

/** The column of one place: a sparse forward solve and a backward one. @throws Fault OUTSIDE */
export function columnOf(ground: Ground, place: Place): Column {
  const { structure, nodes, cases } = ground;
  const solve = supportAt(structure, place.support, 0);
  return {
    place,
    solve,
    at: atNodes(structure, unitField(structure, solve), nodes),
    seat: Float64Array.from(cases, ({ field }) => seen(solve, field)),
  };
}

/** Stand on few columns: compliances from dot products of half-solves. */
export function standOn(ground: Ground, columns: readonly Column[], fixed: number, always: number): Stand {
  const compliance = columns.map(() => new Float64Array(columns.length));
  columns.forEach((column, i) => {
    for (let j = 0; j <= i; j++) {
      compliance[i][j] = complianceOf(column.solve, columns[j].solve);
      compliance[j][i] = compliance[i][j];
    }
  });
  return { ground, columns, compliance, fixed, always };
}

/**
 * Stand on many places: every column of K^-1 is seen by all of them before it is let go. Yields the number of columns
 * done, for progress.
 */
export function* standOnMany(
  ground: Ground,
  places: readonly Place[],
  fixed: number,
  always: number,
): Generator<number, Stand, void> {
  const { structure, nodes, cases } = ground;
  const solves = places.map(({ support }) => supportAt(structure, support, 0));
  const columns: Column[] = [];
  const compliance: Float64Array[] = [];
  for (let j = 0; j < places.length; j++) {
    const unit = unitField(structure, solves[j]);
    compliance.push(Float64Array.from(solves, (solve) => seen(solve, unit)));
    columns.push({
      place: places[j],
      solve: solves[j],
      at: atNodes(structure, unit, nodes),
      seat: Float64Array.from(cases, ({ field }) => seen(solves[j], field)),
    });
    if (j % 64 === 63) yield j + 1;
  }
  return { ground, columns, compliance, fixed, always };
}
