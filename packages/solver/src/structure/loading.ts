import { coupledThermalLoad } from '../assembly/coupled-thermal.ts';
import { clearHeld, rowToLocal, toLocal } from '../assembly/holds.ts';
import { areaRow, everywhereRow, lineRow, pointRow, spanOf } from '../assembly/rows.ts';
import { thermalLoad } from '../assembly/thermal.ts';
import type { SparseRow } from '../linear-algebra/block-matrix.ts';
import { forward } from '../linear-algebra/solve.ts';
import { addRow } from '../linear-algebra/sparse-row.ts';
import type { PlateLoad, PlateProblem } from '../plate/plate-problem.ts';
import { freeStrainsOf } from './sections.ts';
import type { Structure } from './structure.ts';

/** The loads of one case with all that the grounded factor has to say about them. */
export interface Loading {
  /** `[3 * nRows]` consistent load, N and N mm, local axes of the holds. */
  readonly f: Float64Array;
  /** `L^-1 f`: the forward half of its deflection. */
  readonly half: Float64Array;
  /** `N^T f`: resultant in each free rigid motion, `[r]`. */
  readonly resultant: Float64Array;
  /** Sum of the loads along +z, N. */
  readonly total: number;
}

/** A load as its magnitude times a row over dofs whose entries on a uniform `w = 1` sum to `span`. */
interface LoadRow {
  readonly row: SparseRow;
  readonly magnitude: number;
  readonly span: number;
}

/**
 * Consistent load of one case and its forward solve.
 *
 * @throws Fault OUTSIDE or BAD_SHAPE with the path of a load that misses the plate
 */
export function loadingOf(structure: Structure, { loads = [], ...problem }: PlateProblem): Loading {
  const { holds, motion, factor } = structure;
  const f = thermal(structure, problem);
  let total = 0;
  loads.forEach((load, i) => {
    const { row, magnitude, span } = loadRow(structure, load, `loads.${i}`);
    addRow(f, magnitude, rowToLocal(holds, row));
    total += magnitude * span;
  });
  const resultant = Float64Array.from(motion.fields, (field) => field.reduce((sum, value, i) => sum + value * f[i], 0));
  return { f, half: forward(factor, f), resultant, total };
}

/** Load of a temperature field in local axes; zeros without one. */
function thermal(structure: Structure, problem: PlateProblem): Float64Array {
  const { mesh, section, inPlane, rigidities, membranes, theory, holds, stiffness } = structure;
  const strains = freeStrainsOf(problem);
  if (strains === null) return new Float64Array(3 * stiffness.n);
  const sectioned = { ...mesh, region: section };
  const f =
    inPlane === null || membranes === null
      ? thermalLoad(sectioned, rigidities, theory, strains)
      : coupledThermalLoad(sectioned, inPlane, rigidities, membranes, theory, strains);
  toLocal(holds, f);
  clearHeld(holds, f);
  return f;
}

function loadRow({ mesh, locator, ring }: Structure, load: PlateLoad, path: string): LoadRow {
  if ('at' in load) return { row: pointRow(mesh, locator, load.at, `${path}.at`), magnitude: load.force, span: 1 };
  if ('along' in load) {
    const { from, to } = load.along;
    return perUnit(lineRow(mesh, locator, from, to, `${path}.along`), load.force);
  }
  const row =
    load.over === 'all' ? everywhereRow(mesh) : areaRow(mesh, locator, ring(load.over, `${path}.over`), `${path}.over`);
  return 'force' in load ? perUnit(row, load.force) : { row, magnitude: load.pressure, span: spanOf(row) };
}

/** A total force spread evenly over what the row integrates over. */
function perUnit(row: SparseRow, force: number): LoadRow {
  const span = spanOf(row);
  return { row, magnitude: force / span, span };
}
