import type { Ring, Shape } from '@flathead/solver';
import { shapeRing } from '@flathead/solver';

/** Chord of arcs that only the eye and a drag meet, mm. */
const CHORD = 0.05;

const rings = new WeakMap<Shape, Ring | null>();

/** Ring of a shape of the model as edited; `null` for a shape that makes none, which is for the solver to refuse. */
export function displayRing(shape: Shape): Ring | null {
  const known = rings.get(shape);
  if (known !== undefined) return known;
  const ring = ringOrNone(shape);
  rings.set(shape, ring);
  return ring;
}

function ringOrNone(shape: Shape): Ring | null {
  try {
    return shapeRing(shape, { chord: CHORD });
  } catch {
    return null;
  }
}
