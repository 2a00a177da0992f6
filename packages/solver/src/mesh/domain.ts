import type { Point, Region, Ring } from '../geometry/point.ts';

/** What is meshed: a plate and the curves that the mesh must follow. */
export interface MeshDomain {
  /** The plate: outer rings counter-clockwise, holes clockwise. */
  readonly outline: Region;
  /** Rings of the regions; later ones overwrite earlier ones. May cross the outline and each other or lie outside. */
  readonly regions: readonly Ring[];
  /** Points that become nodes where they lie on the plate. */
  readonly points?: readonly Point[];
}
