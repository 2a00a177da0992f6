import { Fault } from '../fault/fault.ts';
import type { PlateProblem } from './plate-problem.ts';

/**
 * Checks what the schema of a plate problem can't: that its parts make sense together.
 *
 * @throws Fault with the path in the problem
 */
export function checkPlateProblem(problem: PlateProblem): void {
  requireFinestMesh(problem);
}

/** Elements this many times smaller than the plate would number in the billions. */
const FINEST = 1e-4;

function requireFinestMesh({ mesh, outline }: PlateProblem): void {
  if (mesh === undefined || !('size' in mesh)) return;
  const extent =
    'circle' in outline
      ? outline.circle
      : 'rectangle' in outline
        ? Math.max(...outline.rectangle)
        : Math.max(...outline.polygon.flat()) - Math.min(...outline.polygon.flat());
  if (mesh.size < FINEST * extent)
    throw new Fault(
      'TOO_LARGE',
      `mesh.size is ${mesh.size} mm on a plate of ${extent} mm; use at least ${FINEST * extent} mm.`,
      'mesh.size',
      { value: mesh.size, expected: FINEST * extent },
    );
}
