import { rowToLocal, toGlobal } from '../assembly/holds.ts';
import type { SparseRow } from '../linear-algebra/block-matrix.ts';
import { addScaled, dotDense } from '../linear-algebra/half-solve.ts';
import { backward, forward } from '../linear-algebra/solve.ts';
import { addRow } from '../linear-algebra/sparse-row.ts';
import { equilibrium, react } from '../supports/equilibrium.ts';
import { addMotion } from '../supports/rigid-motion.ts';
import type { PlateSolution } from './solution.ts';
import type { PlateStages } from './stages.ts';

/**
 * Influence field of a quantity `c u` of a solved case: the deflection under c as a load, held by the supports that
 * hold in that case. The dual solution of error estimates; one forward and one backward solve with the same factor.
 *
 * @param row c, global axes
 * @returns `[3 * nRows]` global axes
 */
export function influence(
  { structure, supports }: Pick<PlateStages, 'structure' | 'supports'>,
  solved: PlateSolution,
  row: SparseRow,
): Float64Array {
  const { factor, motion, holds, stiffness } = structure;
  const load = new Float64Array(3 * stiffness.n);
  addRow(load, 1, rowToLocal(holds, row));
  const y = forward(factor, load);
  const holding = [...supports.values()].filter((_, i) => !solved.letGo.has(i));
  const resultant = Float64Array.from(motion.fields, (field) => field.reduce((sum, v, i) => sum + v * load[i], 0));
  const seat = Float64Array.from(holding, ({ half }) => dotDense(half, y));
  const { force, motion: amplitude } = react(equilibrium(holding, motion.count), seat, resultant);
  holding.forEach(({ half }, i) => {
    addScaled(y, force[i], half);
  });
  const z = backward(factor, y);
  addMotion(motion, amplitude, z);
  toGlobal(holds, z);
  return z;
}
