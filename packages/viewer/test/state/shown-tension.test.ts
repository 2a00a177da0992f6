import { checkHeadModel, solveHead } from '@flathead/solver';
import { describe, expect, it } from 'vitest';
import { withKnownMesh } from '../../src/state/known-mesh.ts';
import type { Solved } from '../../src/state/run-store.ts';
import { shownCase } from '../../src/state/shown-case.ts';
import { shownTension, tensionScale } from '../../src/state/shown-tension.ts';
import { staleCriteria } from '../../src/state/stale-criteria.ts';
import { unjudged } from '../../src/state/unjudged.ts';
import { sampleHead } from './sample-head.ts';

const model = checkHeadModel({
  ...sampleHead,
  body: { ...sampleHead.body, material: 'own' },
  materials: { own: { E: 66000, nu: 0.29, kind: 'ceramic', strength: 90 } },
  limits: { ...sampleHead.limits, strengthFactor: 3, failureProbability: 1e-6 },
});
const run = solveHead(model);
const full: Solved = { model, result: run.result, quality: 'full' };
/** As it comes across a worker: a copy. */
const later = structuredClone(solveHead(model, { quality: 'live', previous: run.stages }).result);
const live: Solved = { model, result: withKnownMesh(later, full.result), quality: 'live' };

describe('shownTension', () => {
  it('is that of the answer shown, or of the last full one on the same mesh', () => {
    const now = shownTension({ solved: full, full }, shownCase(full.result, null));
    expect(now?.stale).toBe(false);
    const kept = shownTension({ solved: live, full }, shownCase(live.result, null));
    expect(kept?.stale).toBe(true);
    expect(kept?.bodyTension).toBe(now?.bodyTension);
  });

  it('is none on another mesh, or before there was a full answer', () => {
    const shown = shownCase(later, null);
    expect(shownTension({ solved: { ...live, result: later }, full }, shown)).toBeNull();
    expect(shownTension({ solved: live, full: null }, shown)).toBeNull();
  });
});

describe('tensionScale', () => {
  const tension = shownTension({ solved: full, full }, shownCase(full.result, null));

  it('ends at strength over the factor asked for', () => {
    expect(tensionScale(model, tension)).toEqual({ top: 30, limited: true });
  });

  it('ends at the largest tension where none is asked for', () => {
    const { strengthFactor: _, ...limits } = model.limits;
    const largest = Math.max(...tension!.bodyTension);
    expect(largest).toBeGreaterThan(0);
    expect(tensionScale({ ...model, limits }, tension)).toEqual({ top: largest, limited: false });
  });
});

describe('criteria', () => {
  it('of stress stay from the full answer while a live one is shown', () => {
    expect(live.result.verdict.criteria.map(({ criterion }) => criterion)).not.toContain('strength');
    expect(staleCriteria({ solved: live, full }).map(({ criterion }) => criterion)).toEqual(['strength']);
    expect(staleCriteria({ solved: full, full })).toEqual([]);
  });

  it('are not judged where a material lacks what they need', () => {
    expect(unjudged(full)).toEqual(['failureProbability']);
    expect(unjudged(live)).toEqual([]);
  });
});
