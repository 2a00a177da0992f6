import { Fault } from '../fault/fault.ts';
import { shapeRing } from '../geometry/ring.ts';
import type { Shape } from '../geometry/shape.ts';
import { straightenedCount, type Vertex } from './curve.ts';
import { shapeOf } from './recognise.ts';

/** Corners that a polygon may have. */
const MOST_CORNERS = 20_000;

/** A shape that a head can have, or the reason why it is none. */
export function soundShape(vertices: readonly Vertex[], tolerance: number): Shape | string {
  const many = (count: number) => `has ${count} corners, more than ${MOST_CORNERS}; use a coarser tolerance`;
  const count = straightenedCount(vertices, tolerance);
  // Those on straight lines will go.
  if (count > 10 * MOST_CORNERS) return many(count);
  const shape = shapeOf(vertices, tolerance);
  if ('polygon' in shape && shape.polygon.length > MOST_CORNERS) return many(shape.polygon.length);
  if ('circle' in shape && !(shape.circle >= 1e-3))
    return `is a circle of ${shape.circle} mm, too small to count; remove it`;
  try {
    shapeRing(shape, { chord: 0.01 });
    return shape;
  } catch (thrown) {
    if (thrown instanceof Fault) return `is none: ${thrown.message}`;
    throw thrown;
  }
}
