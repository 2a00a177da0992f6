import { Fault } from '../fault/fault.ts';
import { area } from '../geometry/region.ts';
import { shapeRing } from '../geometry/ring.ts';
import type { Shape } from '../geometry/shape.ts';
import type { HeadModel } from './head-model.ts';

/** Nodes a head is given: enough for the bow to about 0.5 %, few enough to solve at once. */
const PLAIN = 1700;
/** The same before the ribs, which bring about as many again. */
const RIBBED = 1000;
/** Nodes that a size asked for may lead to. */
const LIMIT = 300_000;

/**
 * Element size of a head: the one asked for, or one that follows from the larger of body and frame. The mesher refines
 * it along ribs and at fasteners; a mesh with a tolerance begins with it.
 *
 * @throws Fault TOO_LARGE when the size asked for would give millions of elements
 */
export function meshSize(model: HeadModel): number {
  const plate = Math.max(
    roughArea(model.body.outline, 'body.outline'),
    model.frame === undefined ? 0 : roughArea(model.frame.outer, 'frame.outer'),
  );
  const sizeFor = (nodes: number) => Math.sqrt((2 * plate) / (Math.sqrt(3) * nodes));
  if (model.mesh === undefined || !('size' in model.mesh))
    return sizeFor((model.frame?.ribs ?? []).length > 0 ? RIBBED : PLAIN);
  const { size } = model.mesh;
  const least = sizeFor(LIMIT);
  if (size < least)
    throw new Fault(
      'TOO_LARGE',
      `mesh.size is ${size} mm, which gives this head more than ${LIMIT} nodes. Use ${least.toFixed(3)} mm or more, or leave it out.`,
      'mesh.size',
      { value: size, expected: `${least.toFixed(3)} or more` },
    );
  return size;
}

/** Area of a shape from few edges: rings keep the area whatever their chord. */
function roughArea(shape: Shape, path: string): number {
  return area([shapeRing(shape, { chord: 1, path })]);
}
