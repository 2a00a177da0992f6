import type { Advice, HeadModel, HeadResult } from '@flathead/solver';
import { describe, expect, it } from 'vitest';
import { keepSolved } from '../../src/solver-client/keep-solved.ts';
import { createRunner } from '../../src/solver-client/runner.ts';
import { createHeadStore } from '../../src/state/head-store.ts';
import { createHistory } from '../../src/state/history.ts';
import { createPointerStore } from '../../src/state/pointer-store.ts';
import { createRunStore, showsEarlier, stalenessOf } from '../../src/state/run-store.ts';
import { shownAdvice } from '../../src/state/shown-advice.ts';
import { gridMesh } from '../buffers/grid-mesh.ts';
import { full } from '../state/answers.ts';
import { sampleHead } from '../state/sample-head.ts';
import { fakeSolver } from './fake-solver.ts';

const result: HeadResult = {
  name: 'sample',
  mesh: gridMesh(2, 2, 1, 1),
  sites: [],
  cases: [],
  verdict: { outcome: 'pass', criteria: [], sentence: '', remarks: [] },
  dofs: 27,
  timings: {},
};
const named = (name: string): HeadModel => ({ ...sampleHead, name });

function runner() {
  const solver = fakeSolver(result);
  const log: string[] = [];
  const made = createRunner(solver.connect, {
    solving: (model) => log.push(model === null ? 'idle' : `solving ${model.name}`),
    solved: (model, { quality }) => log.push(`${quality} ${model.name}`),
    advised: (model, advice) => log.push(`${advice?.moves.length ?? 'no'} moves for ${model.name}`),
    refused: (model, { code }) => log.push(`${code} ${model.name}`),
    restarted: (reason) => log.push(`restarted: ${reason}`),
  });
  return { solver, log, ...made };
}

describe('createRunner', () => {
  it('lets a live run finish while only the newest request waits', async () => {
    const { solver, log, solve } = runner();
    for (const name of ['a', 'b', 'c', 'd']) solve(named(name), 'live');
    expect(solver.asked.map(({ model }) => model.name)).toEqual(['a']);
    await solver.solved(0);
    expect(solver.asked.map(({ model }) => model.name)).toEqual(['a', 'd']);
    await solver.solved(1);
    expect(log.filter((line) => line.startsWith('live'))).toEqual(['live a', 'live d']);
    expect(log).toContain('idle');
  });

  it('lets a full run be overtaken at once', async () => {
    const { solver, log, solve } = runner();
    solve(named('a'), 'full');
    solve(named('b'), 'live');
    expect(solver.asked.map(({ model }) => model.name)).toEqual(['a', 'b']);
    await solver.superseded(0);
    await solver.solved(1);
    expect(log).toEqual(['solving a', 'solving b', 'idle', 'live b']);
  });

  it('asks for advice after a full answer alone, and drops what a newer request overtook', async () => {
    const { solver, log, solve } = runner();
    solve(named('a'), 'live');
    await solver.solved(0);
    expect(solver.advices).toEqual([]);
    solve(named('a'), 'full');
    await solver.solved(1);
    expect(solver.advices.map(({ run }) => run)).toEqual([solver.asked[1].run]);
    solver.advices[0].answer({ criterion: 'bow', moves: [], conclusion: null });
    await solver.superseded(1);
    expect(log).toContain('0 moves for a');
    solve(named('b'), 'full');
    await solver.solved(2);
    solve(named('c'), 'live');
    solver.advices[1].answer({ criterion: 'bow', moves: [], conclusion: null });
    await solver.solved(3);
    expect(log).not.toContain('0 moves for b');
  });

  it('says that there is no advice when the solver fails, is lost or is stopped while it seeks it', async () => {
    const { solver, log, solve, stop } = runner();
    solve(named('a'), 'full');
    await solver.solved(0);
    solver.advices[0].fail(new Error('no'));
    await solver.dies('first');
    expect(log.filter((line) => line === 'no moves for a')).toHaveLength(1);
    solve(named('b'), 'full');
    await solver.solved(1);
    await solver.dies('second');
    expect(log).toContain('no moves for b');
    solve(named('c'), 'full');
    await solver.solved(2);
    stop();
    expect(log).toContain('no moves for c');
  });

  it('never shows an older answer after a newer one', async () => {
    const { solver, log, solve } = runner();
    solve(named('a'), 'full');
    solve(named('b'), 'full');
    await solver.solved(1);
    await solver.solved(0);
    expect(log.filter((line) => line.startsWith('full'))).toEqual(['full b']);
  });

  it('lets the solver see the newest run where it is at work', () => {
    const { solver, solve } = runner();
    solve(named('a'), 'full');
    expect(solver.newest()).toBe(solver.asked[0].run);
    solve(named('b'), 'full');
    expect(solver.newest()).toBe(solver.asked[1].run);
  });

  it('numbers runs upwards', () => {
    const { solver, solve } = runner();
    solve(named('a'), 'full');
    solve(named('b'), 'full');
    expect(solver.asked[1].run).toBeGreaterThan(solver.asked[0].run);
  });

  it('reports a refusal, and a solver that throws', async () => {
    const { solver, log, solve } = runner();
    solve(named('a'), 'full');
    await solver.refused(0, { code: 'MECHANISM', message: '', path: 'fasteners', details: {} });
    solve(named('b'), 'full');
    await solver.fails(1, new Error('out of memory'));
    expect(log.filter((line) => / [ab]$/.test(line) && !line.startsWith('solving'))).toEqual([
      'MECHANISM a',
      'INTERNAL b',
    ]);
  });

  it('starts a fresh solver when one dies and sends the newest request again', async () => {
    const { solver, log, solve } = runner();
    solve(named('a'), 'live');
    solve(named('b'), 'live');
    await solver.dies('crash');
    expect([solver.starts(), solver.closed()]).toEqual([2, 1]);
    expect(solver.asked.map(({ model }) => model.name)).toEqual(['a', 'b']);
    await solver.solved(0);
    await solver.solved(1);
    expect(log).toEqual(['solving a', 'solving b', 'restarted: crash', 'idle', 'live b']);
  });

  it('gives up on a head that kills the solver twice, and solves the next', async () => {
    const { solver, log, solve } = runner();
    solve(named('a'), 'full');
    await solver.dies('crash');
    await solver.dies('crash');
    expect(log.at(-1)).toBe('WORKER_LOST a');
    solve(named('b'), 'full');
    await solver.solved(2);
    expect(log.at(-1)).toBe('full b');
  });

  it('starts the next solver only when needed after one died idle', async () => {
    const { solver, log, solve } = runner();
    solve(named('a'), 'full');
    await solver.solved(0);
    await solver.dies('killed');
    expect(log.at(-1)).toBe('restarted: killed');
    expect(solver.starts()).toBe(1);
    solve(named('b'), 'full');
    expect(solver.starts()).toBe(2);
  });

  it('stops on request', async () => {
    const { solver, log, solve, stop } = runner();
    solve(named('a'), 'full');
    stop();
    expect(solver.closed()).toBe(1);
    expect(log.at(-1)).toBe('CANCELLED a');
    await solver.solved(0);
    expect(log.at(-1)).toBe('CANCELLED a');
  });
});

describe('keepSolved', () => {
  function page(answer: HeadResult = result) {
    const head = createHeadStore(sampleHead);
    const pointer = createPointerStore();
    const run = createRunStore();
    const solver = fakeSolver(answer);
    keepSolved(head, pointer, run, solver.connect, () => {});
    return { head, pointer, run, solver, history: createHistory(head) };
  }

  it('answers live first and in full after', async () => {
    const { run, solver } = page();
    expect(solver.asked.map(({ quality }) => quality)).toEqual(['live']);
    await solver.solved(0);
    expect(solver.asked.map(({ quality }) => quality)).toEqual(['live', 'full']);
    await solver.solved(1);
    expect(run.getState().solved?.quality).toBe('full');
    expect(solver.asked).toHaveLength(2);
  });

  it('stays live while a fastener is dragged and refines when it is let go', async () => {
    const { head, pointer, run, solver, history } = page();
    await solver.solved(0);
    await solver.solved(1);
    pointer.setState({ dragged: 'fastener 0' });
    history.edit(() => named('dragged'));
    await solver.solved(2);
    expect(solver.asked.map(({ quality }) => quality)).toEqual(['live', 'full', 'live']);
    pointer.setState({ dragged: null });
    expect(solver.asked.at(-1)).toMatchObject({ quality: 'full', model: { name: 'dragged' } });
    await solver.solved(3);
    expect(stalenessOf(run.getState(), head.getState().model, false)).toBeNull();
  });

  it('keeps the last good answer, marked stale, when the newest head is refused', async () => {
    const { head, run, solver, history } = page();
    await solver.solved(0);
    await solver.solved(1);
    const good = run.getState().solved;
    history.edit((model) => ({ ...model, theory: 'thin' }));
    expect(stalenessOf(run.getState(), head.getState().model, false)).toBe('solving');
    await solver.refused(2, { code: 'OUTSIDE', message: 'off', path: 'fasteners.0.at', details: {} });
    expect(run.getState().solved).toBe(good);
    expect(showsEarlier(run.getState(), head.getState().model)).toBe(true);
    expect(stalenessOf(run.getState(), head.getState().model, false)).toBe('refused');
    // The head from before is known, and not solved again.
    history.undo();
    expect(run.getState()).toMatchObject({ refusal: null, solved: { quality: 'full' } });
    expect(showsEarlier(run.getState(), head.getState().model)).toBe(false);
    expect(solver.asked).toHaveLength(3);
  });

  const failing: HeadResult = structuredClone(full.result);
  const judged = failing.verdict.criteria.map((one) => (one.criterion === 'bow' ? { ...one, outcome: 'fail' } : one));
  const bowed: HeadResult = {
    ...failing,
    verdict: { ...failing.verdict, criteria: judged as typeof failing.verdict.criteria },
  };
  const thicker = (model: HeadModel) => ({ ...model, body: { ...model.body, thickness: model.body.thickness + 0.5 } });
  const adviceOn = (model: HeadModel): Advice => ({
    criterion: 'bow',
    moves: [{ kind: 'thickness', sentence: 'x', model: thicker(model), by: 0.5, value: 1, gain: 1, within: true }],
    conclusion: null,
  });

  it('puts advice back with a known answer, under the name of the head that it now is for', async () => {
    const { head, run, solver, history } = page(bowed);
    await solver.solved(0);
    await solver.solved(1);
    const before = head.getState().model;
    solver.advices[0].answer(adviceOn(before));
    await solver.superseded(1);
    history.edit(thicker);
    expect(shownAdvice(run.getState(), head.getState().model)).toBe('awaited');
    history.undo();
    expect(shownAdvice(run.getState(), head.getState().model)).toMatchObject({ moves: [{ kind: 'thickness' }] });
    history.edit((model) => ({ ...model, name: 'renamed', note: 'noted' }));
    expect(shownAdvice(run.getState(), head.getState().model)).toMatchObject({
      moves: [{ model: { name: 'renamed', note: 'noted', body: thicker(before).body } }],
    });
    expect(solver.asked).toHaveLength(3);
  });

  it('asks again for advice that a known answer lacks', async () => {
    const { head, run, solver, history } = page(bowed);
    await solver.solved(0);
    await solver.solved(1);
    history.edit(thicker);
    history.undo();
    const { model } = head.getState();
    expect(run.getState().solved).toMatchObject({ model, quality: 'full' });
    await solver.solved(2);
    expect(solver.asked.at(-1)).toMatchObject({ quality: 'full', model });
    await solver.solved(3);
    solver.advices.at(-1)?.answer(adviceOn(model));
    await solver.superseded(3);
    expect(shownAdvice(run.getState(), model)).toMatchObject({ moves: [{ kind: 'thickness' }] });
  });

  it('awaits no advice on a head that is refused', async () => {
    const { head, run, solver, history } = page(bowed);
    await solver.solved(0);
    await solver.solved(1);
    history.edit(thicker);
    await solver.refused(2, { code: 'OUTSIDE', message: 'off', path: 'fasteners.0.at', details: {} });
    expect(shownAdvice(run.getState(), head.getState().model)).toBe('none');
  });

  it('keeps the mesh object while the mesh is the same', async () => {
    const { run, solver } = page();
    await solver.solved(0);
    const { mesh } = run.getState().solved!.result;
    await solver.solved(1);
    expect(run.getState().solved!.result.mesh).toBe(mesh);
  });
});
