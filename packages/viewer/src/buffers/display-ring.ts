import type { Ring, Shape } from '@flathead/solver';
import { shapeRing } from '../solver-extras.ts';

/** Chord of arcs that only the eye and a drag meet, mm. */
const CHORD = 0.05;

/** Ring of a shape of the model as edited; `null` for a shape that makes none, which is for the solver to refuse. */
export function displayRing(shape: Shape): Ring | null {
  try {
    return shapeRing(shape, { chord: CHORD });
  } catch {
    return null;
  }
}
