import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { createWorkbench } from '../../src/state/workbench.ts';
import { workbookOf } from '../../src/state/workbook.ts';
import { full, model } from '../state/answers.ts';
import { fakeSolver } from './fake-solver.ts';

const thick = (thickness: number) => ({ ...model, body: { ...model.body, thickness } });
const { result } = full;

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'], shouldAdvanceTime: true });
});
afterEach(() => {
  vi.useRealTimers();
});

/** A page on three variants whose first is answered in full. */
async function page() {
  const bench = fakeSolver(result);
  const behind = fakeSolver(result);
  const workbench = createWorkbench(workbookOf([thick(4), thick(5), thick(6)]), bench.connect, behind.connect);
  expect(behind.asked).toEqual([]);
  await bench.solved(0);
  await bench.solved(1);
  const pass = (ms: number) => vi.advanceTimersByTimeAsync(ms);
  return { ...workbench, bench, behind, pass };
}

describe('the variants of a page', () => {
  it('are solved behind the bench once it is quiet, and come on it with their answers', async () => {
    const { behind, bench, pass, history, run, head } = await page();
    expect(behind.asked).toEqual([]);
    await pass(700);
    await behind.solved(0);
    await behind.solved(1);
    expect(behind.asked.map(({ model: asked }) => asked.body.thickness)).toEqual([5, 6]);

    history.putOnBench('v3');
    const { solved, solving } = run.getState();
    expect([solved?.model, solved?.quality, solving]).toEqual([head.getState().model, 'full', null]);
    expect(bench.asked.length).toBe(2);
  });

  it('wait while the bench solves or something is dragged', async () => {
    const { behind, bench, pass, history, pointer } = await page();
    await pass(700);
    expect(behind.asked.length).toBe(1);
    history.edit((now) => ({ ...now, body: { ...now.body, thickness: 7 } }));
    expect(behind.closed()).toBe(1);
    await pass(5000);
    expect(behind.asked.length).toBe(1);
    pointer.setState({ dragged: 'fastener 0' });
    await bench.solved(2);
    await pass(5000);
    expect(behind.asked.length).toBe(1);
    pointer.setState({ dragged: null });
    await bench.solved(3);
    await pass(700);
    expect(behind.asked.length).toBe(2);
  });

  it('show no late answer of the bench over one that was known', async () => {
    const { behind, bench, pass, history, run, head } = await page();
    await pass(700);
    await behind.solved(0);
    history.edit((now) => ({ ...now, body: { ...now.body, thickness: 7 } }));
    history.putOnBench('v2');
    await bench.solved(2);
    expect(run.getState().solved?.model).toBe(head.getState().model);
    expect(head.getState().model.body.thickness).toBe(5);
  });

  it('lose text in a field that was meant for another variant', async () => {
    const { drafts, history } = await page();
    const draft = { text: 'x', message: 'no number', over: 4, begun: false };
    drafts.setState({ drafts: { 'body.thickness': draft } });
    history.putOnBench('v2');
    expect(drafts.getState().drafts).toEqual({});
  });
});
