import type { HeadResult } from '@flathead/solver';

/**
 * The answer with the mesh object of the one before where both are the same mesh, so that what is built on it can stay.
 * Across a worker every answer brings its own copy.
 */
export function withKnownMesh(result: HeadResult, before: HeadResult | undefined): HeadResult {
  if (before === undefined) return result;
  const { mesh } = before;
  const same =
    equal(mesh.x, result.mesh.x) && equal(mesh.y, result.mesh.y) && equal(mesh.triangles, result.mesh.triangles);
  return same ? { ...result, mesh } : result;
}

function equal(a: Float64Array | Uint32Array, b: Float64Array | Uint32Array): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
}
