import { checkHeadModel, solveHead } from '@flathead/solver';
import { withKnownMesh } from '../../src/state/known-mesh.ts';
import type { Solved } from '../../src/state/run-store.ts';
import { sampleHead } from './sample-head.ts';

/** A ceramic of known strength and unknown scatter, to be judged by both. */
export const model = checkHeadModel({
  ...sampleHead,
  body: { ...sampleHead.body, material: 'own' },
  materials: { own: { E: 66000, nu: 0.29, kind: 'ceramic', strength: 90 } },
  limits: { ...sampleHead.limits, strengthFactor: 3, failureProbability: 1e-6 },
});
const run = solveHead(model);
export const full: Solved = { model, result: run.result, quality: 'full' };
/** As it comes across a worker: a copy. */
export const later = structuredClone(solveHead(model, { quality: 'live', previous: run.stages }).result);
export const live: Solved = { model, result: withKnownMesh(later, full.result), quality: 'live' };
