import type { PlateResult } from '../src/results/plate-result.ts';
import { solveHead } from '../src/solve-head.ts';
import { solvePlate } from '../src/solve-plate.ts';
import type { PlateModel, PlateReading, VerificationModel } from './check.ts';

/** Element sizes over the finest one. */
const MESHES = [4, 2, 1] as const;

export interface Measured {
  /** For each check of the model its values in its unit, mesh by mesh. */
  readonly values: readonly (readonly number[])[];
  readonly nodes: readonly number[];
}

/** Values of all checks of a model on three meshes, or without any where it needs none. */
export function measured(model: VerificationModel): Measured {
  if (model.kind === 'formula') return { values: model.checks.map(({ read, scale }) => [read() / scale]), nodes: [] };
  const runs = MESHES.map((coarser) => {
    const size = coarser * model.size;
    if (model.kind === 'head') {
      const { result } = solveHead({ ...model.head, mesh: { size } }, { strength: 'when judged' });
      return { nodes: result.mesh.x.length, values: model.checks.map(({ read, scale }) => read(result) / scale) };
    }
    const result = solvePlate(problemOf(model, size));
    return {
      nodes: result.mesh.nodes,
      values: model.checks.map(({ read, scale }, i) => readingOf(read, result, i) / scale),
    };
  });
  return {
    values: model.checks.map((_, i) => runs.map(({ values }) => values[i])),
    nodes: runs.map(({ nodes }) => nodes),
  };
}

/** The plate problem of a model: point i of `report.at` is what check i reads at. */
export function problemOf({ plate, checks }: PlateModel, size: number) {
  const at = checks.map(({ read }): [number, number] => ('at' in read ? [read.at[0], read.at[1]] : anyPoint(plate)));
  return { ...plate, mesh: { size }, report: { ...plate.report, at } };
}

/** Where nothing is read: a support lies on the plate. */
function anyPoint({ supports }: PlateModel['plate']): [number, number] {
  return supports === undefined ? [0, 0] : [...supports[0].at];
}

function readingOf(read: PlateReading, { w, moments, reactions, flatness }: PlateResult, i: number): number {
  switch (read.of) {
    case 'w':
      return w.at[i];
    case 'reaction':
      return reactions[read.support];
    case 'peak to valley':
      return w.max.value - w.min.value;
    case 'flatness':
      return flatness?.minimumZone ?? Number.NaN;
    default:
      return moments.at[i][read.of];
  }
}
