import { describe, expect, it } from 'vitest';
import type { HeadModel } from '../../src/model/head-model.ts';
import { solveHead } from '../../src/solve-head.ts';
import { solverService } from '../../src/worker/service.ts';
import { twoByTwo } from '../model/two-by-two.ts';

const breathe = () => new Promise<void>((resolve) => setTimeout(resolve, 0));

const moved: HeadModel = {
  ...twoByTwo,
  fasteners: twoByTwo.fasteners.map((fastener, i) => (i === 0 ? { ...fastener, at: [-18, 15.5] } : fastener)),
};

describe('solver service', () => {
  it('answers the newest run and drops the one it overtook', async () => {
    const service = solverService(breathe);
    const [first, second] = await Promise.all([service.solve(1, twoByTwo, 'full'), service.solve(2, moved, 'full')]);
    expect(first).toEqual({ run: 1, kind: 'superseded' });
    expect(second.kind).toBe('solved');
  });

  it('keeps the mesh while live and comes back to the answer of the model alone', async () => {
    const service = solverService(breathe);
    const before = await service.solve(1, twoByTwo, 'full');
    const live = await service.solve(2, moved, 'live');
    const full = await service.solve(3, moved, 'full');
    if (before.kind !== 'solved' || live.kind !== 'solved' || full.kind !== 'solved') throw new Error('refused');
    expect(live.result.mesh).toBe(before.result.mesh);
    expect(live.result.verdict.criteria[0].error).toBeNull();
    const alone = solveHead(moved).result.verdict.criteria[0];
    expect(full.result.verdict.criteria[0]).toEqual(alone);
    // Two meshes of the same head differ by their errors only.
    expect(Math.abs(live.result.verdict.criteria[0].value / alone.value - 1)).toBeLessThan(0.005);
  });

  it('ends a run in the middle of its factor when a newer one is meant', async () => {
    const service = solverService(breathe);
    const newest = Int32Array.of(1);
    expect(await service.solve(0, twoByTwo, 'live', newest)).toEqual({ run: 0, kind: 'superseded' });
    expect((await service.solve(1, twoByTwo, 'live', newest)).kind).toBe('solved');
  });

  it('advises on its last full answer, until a newer run comes', async () => {
    const service = solverService(breathe);
    const { probes } = twoByTwo.sites;
    const failing = { ...twoByTwo, sites: { ...twoByTwo.sites, probes: { ...probes, preload: 10 } } };
    await service.solve(1, failing, 'live');
    expect(await service.advise(1)).toBeNull();
    await service.solve(2, failing, 'full');
    const kinds = (await service.advise(2))?.moves.map(({ kind }) => kind);
    expect(kinds?.toSorted()).toEqual(['fasteners', 'frame', 'ribs', 'thickness', 'together']);
    const [overtaken] = await Promise.all([service.advise(2), service.solve(3, failing, 'live')]);
    expect(overtaken).toBeNull();
  });

  it('refuses a bad model with its path and goes on with the next', async () => {
    const service = solverService(breathe);
    const bad = { ...twoByTwo, body: { ...twoByTwo.body, thickness: -1 } };
    const refused = await service.solve(1, bad, 'full');
    expect(refused).toMatchObject({ run: 1, kind: 'refused', fault: { path: 'body.thickness' } });
    expect((await service.solve(2, twoByTwo, 'live')).kind).toBe('solved');
  });
});
