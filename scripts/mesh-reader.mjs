import { spawnSync } from 'node:child_process';

/** Debian's own Python first: its packages are not seen by another one that stands before it on PATH. */
const PYTHONS = ['/usr/bin/python3', 'python3', 'python'];

/**
 * A Python on this machine that has the mesh library meshio.
 *
 * @returns {string | undefined}
 */
export function findMeshReader() {
  return PYTHONS.find((python) => spawnSync(python, ['-c', 'import meshio'], { stdio: 'ignore' }).status === 0);
}
