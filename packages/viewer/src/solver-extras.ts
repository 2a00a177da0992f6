// Until @flathead/solver offers these by its front door.
export { distanceToRing, insideRegion, insideRing } from '../../solver/src/geometry/inside.ts';
export { shapeRing } from '../../solver/src/geometry/ring.ts';
export type { Site } from '../../solver/src/layout/site.ts';
export { siteLayout, sitePitch } from '../../solver/src/layout/sites.ts';
export { barycentric, type Locator, locate, locator } from '../../solver/src/mesh/locate.ts';
export type { Mesh } from '../../solver/src/mesh/mesh.ts';
export type * from '../../solver/src/model/head-model.ts';
export { headParts } from '../../solver/src/model/parts.ts';
