import { rowToLocal } from '../assembly/holds.ts';
import { averageRow, discRow } from '../assembly/rows.ts';
import type { PlateSupport } from '../plate/plate-problem.ts';
import type { Support } from '../supports/compliance.ts';
import type { Structure } from './structure.ts';

/**
 * A support as it meets the dofs: the average of w over its area or bearing disc, or w at its point.
 *
 * @throws Fault OUTSIDE when it is off the plate
 */
export function supportOf(structure: Structure, support: PlateSupport, index: number): Support {
  const path = `supports.${index}`;
  const { at, over, diameter = 0, stiffness = null, acts = 'both', height = 0, name = `S${index + 1}` } = support;
  const { mesh, locator, holds, ring } = structure;
  const row =
    over === undefined
      ? discRow(mesh, locator, at, diameter, `${path}.at`)
      : averageRow(mesh, locator, ring(over, `${path}.over`), `${path}.over`);
  return { name, row: rowToLocal(holds, row), stiffness, acts, height };
}
