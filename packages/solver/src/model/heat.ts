import { Fault } from '../fault/fault.ts';
import type { PlateProblem } from '../plate/plate-problem.ts';
import type { HeadModel } from './head-model.ts';
import { findMaterial } from './materials.ts';

/** Temperature at which a head is put together, flat and without stress, degC. */
export const ASSEMBLED = 20;

/**
 * Temperature field of a case: uniform, and linear in z with the given difference across the body; the frame goes on at
 * the same slope. The screws let the head slide on the board, so that nothing but the frame restrains the body in its
 * plane; a frame that slides on the body restrains nothing.
 *
 * @returns `undefined` for a case at the temperature of assembly
 * @throws Fault SCHEMA for a material whose expansion is not known
 */
export function caseTemperature(model: HeadModel, index: number): PlateProblem['temperature'] {
  const { temperature = ASSEMBLED, gradient = 0 } = model.cases[index];
  const change = temperature - ASSEMBLED;
  if (change === 0 && gradient === 0) return undefined;
  requireExpansion(model, model.body.material, 'body.material', index);
  if (model.frame !== undefined) requireExpansion(model, model.frame.material, 'frame.material', index);
  return { change, gradient, over: model.body.thickness };
}

function requireExpansion(model: HeadModel, name: string, path: string, index: number): void {
  if (findMaterial(model, name, path).expansion !== undefined) return;
  throw new Fault(
    'SCHEMA',
    `Case "${model.cases[index].name}" is heated, but nothing is known of the expansion of ${name}. Give "expansion" of it in 1/K, such as 6.5e-6, or leave out the temperature and the gradient.`,
    `materials.${name}.expansion`,
    { material: name },
  );
}
