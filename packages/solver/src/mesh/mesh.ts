/** Conforming triangle mesh of the plate. Immutable; topology in `Uint32Array`, coordinates in mm. */
export interface Mesh {
  /** `[nNodes]` */
  readonly x: Float64Array;
  /** `[nNodes]` */
  readonly y: Float64Array;
  /** `[3 * nTriangles]` node indices, counter-clockwise. */
  readonly triangles: Uint32Array;
  /** `[nTriangles]` index of the region that the triangle lies in: 0 = base, r + 1 = `regions[r]` of the domain. */
  readonly region: Uint32Array;
  /** `[2 * nBoundaryEdges]` node pairs along the boundary, domain on the left. */
  readonly boundary: Uint32Array;
  /** Smallest angle of any triangle, degrees. */
  readonly minAngle: number;
}
