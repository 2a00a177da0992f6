import { z } from 'zod';
import { Fault } from '../../fault/fault.ts';
import { pointSchema } from '../../geometry/shape.ts';
import type { HeadModel } from '../../model/head-model.ts';
import { label } from '../../model/ranges.ts';

/** Where all fasteners of a head go: complete, so that a model and a placement make a variant. */
export const placementSchema = z
  .array(
    z.strictObject({
      name: label,
      at: pointSchema,
      like: label.describe('fastener of the model that it is, or is like'),
    }),
  )
  .min(1)
  .max(500);

export type Placement = z.infer<typeof placementSchema>;

/**
 * The model with its fasteners as placed: each is the fastener of the model it is like, under its own name and at its
 * own place. Fasteners of the model that are not placed are gone.
 *
 * @throws Fault SCHEMA when it is like a fastener that the model does not have
 */
export function applyPlacement(model: HeadModel, placement: Placement): HeadModel {
  const fasteners = placement.map(({ name, at, like }, i) => {
    const pattern = model.fasteners.find((fastener) => fastener.name === like);
    if (pattern === undefined)
      throw new Fault(
        'SCHEMA',
        `Fastener ${name} of the placement is like "${like}", which the model does not have. Use the model that the placement was made for.`,
        `${i}.like`,
        { value: like, expected: model.fasteners.map((fastener) => fastener.name) },
      );
    return { ...pattern, name, at };
  });
  return { ...model, fasteners };
}
