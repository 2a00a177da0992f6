import kestrelBoth from '../models/kestrel-both.json';
import type { Ring } from '../packages/solver/src/geometry/point.ts';
import type { BlockMatrix } from '../packages/solver/src/linear-algebra/block-matrix.ts';
import { compileHead } from '../packages/solver/src/model/compile.ts';
import { checkHeadModel } from '../packages/solver/src/model/read.ts';
import type { PlateProblem } from '../packages/solver/src/plate/plate-problem.ts';
import { meshPlate } from '../packages/solver/src/structure/meshed.ts';
import { stopwatch } from '../packages/solver/src/structure/stopwatch.ts';
import { buildStructure, type Structure } from '../packages/solver/src/structure/structure.ts';
import { grounded, grounding } from '../packages/solver/src/supports/grounding.ts';

/** Kestrel with ribs: its mesh is graded to ribs, probe fields, bearings and the window of the frame. */
export const kestrelModel = checkHeadModel(kestrelBoth);

/** Kestrel, mounted, as a plate with shear at an element size. */
export function kestrel(size: number): { readonly problem: PlateProblem; readonly areas: readonly Ring[] } {
  const { problems, siteArea } = compileHead({ ...kestrelModel, mesh: { size } });
  return { problem: { ...problems[0], theory: 'shear' }, areas: siteArea };
}

/** Element size that gives Kestrel about that many dofs, by trial: dofs go with its inverse square. */
export function sizeForDofs(dofs: number): number {
  for (let size = 1.4; ; ) {
    const { problem, areas } = kestrel(size);
    const ratio = (3 * meshPlate(problem, areas, 1, stopwatch()).mesh.x.length) / dofs;
    if (Math.abs(ratio - 1) < 0.03) return size;
    size *= Math.sqrt(ratio);
  }
}

/** Kestrel meshed, assembled and factorised with about that many dofs. */
export function kestrelStructure(dofs: number): Structure {
  const { problem, areas } = kestrel(sizeForDofs(dofs));
  return buildStructure(problem, meshPlate(problem, areas, 1, stopwatch()), stopwatch());
}

/** The matrix that is factorised: the free plate on its grounding springs. */
export function groundedMatrix({ stiffness, motion }: Structure): BlockMatrix {
  return grounded(stiffness, grounding(stiffness, motion));
}
