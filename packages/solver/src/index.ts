export { Fault, type FaultCode, type FaultReport, faultReport } from './fault/fault.ts';
export { distanceToRing, insideRegion, insideRing } from './geometry/inside.ts';
export type { Point, Region, Ring } from './geometry/point.ts';
export { shapeRing } from './geometry/ring.ts';
export type { Shape } from './geometry/shape.ts';
export type { Site } from './layout/site.ts';
export { siteLayout, sitePitch } from './layout/sites.ts';
export type { Crew } from './linear-algebra/crew.ts';
export { barycentric, type Locator, locate, locator } from './mesh/locate.ts';
export type { Mesh } from './mesh/mesh.ts';
export type { StiffnessTerms } from './model/fastener-stiffness.ts';
export type * from './model/head-model.ts';
export { headModelSchema } from './model/head-model.ts';
export { modelSchemas } from './model/json-schema.ts';
export { type MaterialPreset, materialPresets } from './model/materials.ts';
export { modelHash } from './model/model-hash.ts';
export { headParts } from './model/parts.ts';
export { checkHeadModel, readHeadModel } from './model/read.ts';
export { type Screw, screws } from './model/screws.ts';
export { didYouMean } from './plate/near-names.ts';
export { type PlateProblem, plateProblemSchema } from './plate/plate-problem.ts';
export { readPlateProblem } from './plate/read.ts';
export { LONGEST_TEXT } from './plate/read-json.ts';
export { micrometres, usedShare } from './results/criteria/criterion.ts';
export type * from './results/head-result.ts';
export type { JointResult } from './results/joint.ts';
export type { PlateResult } from './results/plate-result.ts';
export type { SeatCellResult, SeatResult } from './results/seats.ts';
export { type HeadOptions, type HeadRun, type HeadStages, headSteps, releaseStages, solveHead } from './solve-head.ts';
export { solvePlate } from './solve-plate.ts';
export { applyPlacement, type Placement, placementSchema } from './studies/placement/placement.ts';
export { placementSteps } from './studies/placement/placement-steps.ts';
export {
  checkPlacementPlan,
  type PlacementPlan,
  placementPlanSchema,
  readPlacementPlan,
} from './studies/placement/plan.ts';
export type * from './studies/placement/rows.ts';
export { VERSION } from './version.ts';
export type { Answer, SolverService } from './worker/protocol.ts';
export { solverService } from './worker/service.ts';
