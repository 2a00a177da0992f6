import type { Foundation } from '../../src/assembly/foundation.ts';
import type { HeldEdge } from '../../src/assembly/held-edges.ts';
import { clearHeld, holdsOf, toGlobal, toLocal } from '../../src/assembly/holds.ts';
import { blockPattern } from '../../src/assembly/pattern.ts';
import { everywhereRow } from '../../src/assembly/rows.ts';
import { assembleStiffness } from '../../src/assembly/stiffness.ts';
import { addRow } from '../../src/linear-algebra/sparse-row.ts';
import type { Mesh } from '../../src/mesh/mesh.ts';
import { nodalMoments } from '../../src/results/moments.ts';
import type { Rigidity } from '../../src/section/rigidity.ts';
import { denseSolve } from './dense-solve.ts';
import { nearest } from './sample-meshes.ts';

export interface TestPlate {
  readonly mesh: Mesh;
  readonly rigidity: Rigidity;
  readonly theory?: 'thin' | 'shear';
  readonly edges?: readonly HeldEdge[];
  readonly foundations?: readonly Foundation[];
  /** Global load; a unit pressure if left out. */
  readonly load?: Float64Array;
}

/** Solves a small plate by a dense factorisation: deflection and moments at the node nearest to a point. */
export function solvePlate({ mesh, rigidity, theory = 'thin', edges = [], foundations = [], load }: TestPlate) {
  const holds = holdsOf(mesh, edges);
  const K = assembleStiffness(mesh, blockPattern(mesh), [rigidity], theory, foundations, holds);
  const f = load?.slice() ?? new Float64Array(3 * mesh.x.length);
  if (load === undefined) addRow(f, 1, everywhereRow(mesh));
  toLocal(holds, f);
  clearHeld(holds, f);
  const u = denseSolve(K, f);
  toGlobal(holds, u);
  const moments = nodalMoments(mesh, [rigidity], theory, u);
  return {
    u,
    w: (x: number, y: number): number => u[3 * nearest(mesh, x, y)],
    moment: (x: number, y: number): readonly number[] => {
      const corner = mesh.triangles.indexOf(nearest(mesh, x, y));
      return [...moments.subarray(3 * corner, 3 * corner + 3)];
    },
  };
}
