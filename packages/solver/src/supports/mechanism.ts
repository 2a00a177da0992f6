import { Matrix, SVD } from 'ml-matrix';
import { Fault } from '../fault/fault.ts';
import type { SupportSolve } from './compliance.ts';

/** Smallest over largest singular value of the supports' grip on the free rigid motions that still counts as held. */
const GRIP = 1e-7;

/**
 * Makes sure that the supports hold every free rigid motion.
 *
 * @param free number r of free rigid motions, 0 to 3
 * @throws Fault MECHANISM naming the supports and the motion they leave
 */
export function requireHeld(supports: readonly SupportSolve[], free: number): void {
  if (free === 0) return;
  const m = supports.length;
  const held = m === 0 ? 0 : rank(supports, free);
  if (held === free) return;
  const names = supports.map((solve) => solve.support.name);
  throw new Fault('MECHANISM', `${describe(names, free - held)}`, 'supports', {
    supports: names,
    freeMotions: free - held,
  });
}

function rank(supports: readonly SupportSolve[], free: number): number {
  // A zero row keeps the matrix at least as tall as wide, as the decomposition expects.
  const grip = Matrix.zeros(Math.max(supports.length, free), free);
  supports.forEach((solve, i) => {
    solve.motion.forEach((share, r) => {
      grip.set(i, r, share);
    });
  });
  const singular = new SVD(grip).diagonal;
  return singular.filter((value) => value > GRIP * Math.max(singular[0], GRIP)).length;
}

function describe(names: readonly string[], left: number): string {
  if (names.length === 0)
    return 'Nothing holds the plate: it has no supports, held edges or foundation that stop it from moving as a whole. Add three supports that are not on one line, or hold an edge.';
  const list = names.length <= 6 ? names.join(', ') : `${names.slice(0, 6).join(', ')} and ${names.length - 6} more`;
  const motion = left === 1 ? 'free to rotate about one line' : 'free to rotate about more than one line';
  const plural = names.length === 1 ? 'Support' : 'Supports';
  return `${plural} ${list} leave${names.length === 1 ? 's' : ''} the plate ${motion}; add ${left === 1 ? 'a support' : `${left} supports`} off that line.`;
}
