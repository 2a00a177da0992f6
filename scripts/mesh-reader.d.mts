/** A Python on this machine that has the mesh library meshio. */
export function findMeshReader(): string | undefined;
