import { describe, expect, it } from 'vitest';
import { shownCase } from '../../src/state/shown-case.ts';
import { shownTension, tensionScale } from '../../src/state/shown-tension.ts';
import { full, later, live, model } from './answers.ts';

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
    const { limit, top, largest } = tensionScale(model, tension);
    expect(limit).toBe(30);
    expect(largest).toBe(Math.max(...tension!.bodyTension));
    expect(top).toBeGreaterThanOrEqual(Math.max(37.5, largest));
  });

  it('ends at no limit where the body yields rather than breaks', () => {
    const materials = { own: { ...model.materials!.own, kind: 'metal' as const } };
    expect(tensionScale({ ...model, materials }, tension).limit).toBeNull();
  });

  it('ends at the largest tension where none is asked for', () => {
    const { strengthFactor: _, ...limits } = model.limits;
    const largest = Math.max(...tension!.bodyTension);
    expect(largest).toBeGreaterThan(0);
    expect(tensionScale({ ...model, limits }, tension)).toEqual({ limit: null, top: largest, largest });
  });
});
