import './without-eval.ts';

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
export { draftHead, type HeadDraft, headDraftSchema } from './model/draft-head.ts';
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
export { LONGEST_TEXT, readJson } from './plate/read-json.ts';
export { micrometreLimit, micrometreMargin, micrometres, usedShare } from './results/criteria/criterion.ts';
export type * from './results/head-result.ts';
export type { JointResult } from './results/joint.ts';
export type { PlateResult } from './results/plate-result.ts';
export type { SeatCellResult, SeatResult } from './results/seats.ts';
export { type Advice, type AdvisedMove, adviceSteps, adviseHead } from './solve-advice.ts';
export { type HeadOptions, type HeadRun, type HeadStages, headSteps, releaseStages, solveHead } from './solve-head.ts';
export { solvePlate } from './solve-plate.ts';
export { type BudgetRow, type BudgetSummary, budgetSteps, budgetStudy } from './studies/budget/budget.ts';
export type { BudgetPlan } from './studies/budget/plan.ts';
export { type BudgetSums, budgetSums, mostAllowed, type Share } from './studies/budget/sums.ts';
export type { Figure, Judged } from './studies/judged.ts';
export type { Setting } from './studies/parameter.ts';
export { applyPlacement, type Placement, placementSchema } from './studies/placement/placement.ts';
export { placementSteps } from './studies/placement/placement-steps.ts';
export {
  checkPlacementPlan,
  type PlacementPlan,
  placementPlanSchema,
  readPlacementPlan,
} from './studies/placement/plan.ts';
export type * from './studies/placement/rows.ts';
export type { SitesPlan } from './studies/sites/plan.ts';
export { type SitesRow, type SitesSummary, sitesSteps, sitesStudy, withPattern } from './studies/sites/sites.ts';
export { studyOf } from './studies/studies.ts';
export { type Part, partIndices, readPart, type Study, type StudyKind, type StudyRow } from './studies/study.ts';
export { headerLine, mergeStudies, rowLine, summaryLine } from './studies/study-file.ts';
export { axisValues, readAxis } from './studies/sweep/axis-values.ts';
export type { Crossing } from './studies/sweep/crossing.ts';
export { readDesign } from './studies/sweep/design-table.ts';
export type { SweepPlan } from './studies/sweep/plan.ts';
export { type SweepRow, type SweepSummary, sweepSteps, sweepStudy } from './studies/sweep/sweep.ts';
export { readDistribution } from './studies/tolerance/distribution.ts';
export type { TolerancePlan } from './studies/tolerance/plan.ts';
export type { ToleranceRow } from './studies/tolerance/row.ts';
export type { Estimate } from './studies/tolerance/sample-statistics.ts';
export type { FigureScatter, ToleranceSummary } from './studies/tolerance/summary.ts';
export { toleranceSteps, toleranceStudy } from './studies/tolerance/tolerance.ts';
export { VERSION } from './version.ts';
export type { Answer, SolverService } from './worker/protocol.ts';
export { solverService } from './worker/service.ts';
export type * from './worker/study-protocol.ts';
