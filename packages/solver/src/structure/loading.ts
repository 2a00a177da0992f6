import { coupledThermalLoad } from '../assembly/coupled-thermal.ts';
import { clearHeld, rowToLocal, toLocal } from '../assembly/holds.ts';
import { areaRow, everywhereRow, lineRow, pointRow, pointsRow, spanOf } from '../assembly/rows.ts';
import { thermalLoad } from '../assembly/thermal.ts';
import type { SparseRow } from '../linear-algebra/block-matrix.ts';
import { forward } from '../linear-algebra/solve.ts';
import { addRow } from '../linear-algebra/sparse-row.ts';
import { keyOf } from '../plate/key-of.ts';
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

/** What a load acts on, as a row over dofs in local axes whose entries on a uniform `w = 1` sum to `span`. */
export interface LoadRow {
  readonly row: SparseRow;
  readonly span: number;
}

/**
 * Consistent load of one case and its forward solve.
 *
 * @param rows of loads by what they act on, shared by cases; filled in
 * @throws Fault OUTSIDE or BAD_SHAPE with the path of a load that misses the plate
 */
export function loadingOf(
  structure: Structure,
  { loads = [], ...problem }: PlateProblem,
  rows: Map<string, LoadRow>,
): Loading {
  const { motion, factor } = structure;
  const f = thermal(structure, problem);
  let total = 0;
  loads.forEach((load, i) => {
    const place = keyOf(placeOf(load));
    const { row, span } = rows.get(place) ?? loadRow(structure, load, `loads.${i}`);
    rows.set(place, { row, span });
    const magnitude = 'pressure' in load ? load.pressure : load.force / span;
    addRow(f, magnitude, row);
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

/** The load without its size. */
function placeOf(load: PlateLoad) {
  if ('at' in load) return { at: load.at };
  if ('points' in load) return { points: load.points };
  return 'along' in load ? { along: load.along } : { over: load.over };
}

function loadRow({ mesh, locator, ring, holds }: Structure, load: PlateLoad, path: string): LoadRow {
  const row = globalRow();
  return { row: rowToLocal(holds, row), span: spanOf(row) };

  function globalRow(): SparseRow {
    if ('at' in load) return pointRow(mesh, locator, load.at, `${path}.at`);
    if ('points' in load) return pointsRow(mesh, locator, load.points, `${path}.points`);
    if ('along' in load) return lineRow(mesh, locator, load.along.from, load.along.to, `${path}.along`);
    if (load.over === 'all') return everywhereRow(mesh);
    return areaRow(mesh, locator, ring(load.over, `${path}.over`), `${path}.over`);
  }
}
