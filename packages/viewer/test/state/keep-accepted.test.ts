import type { FaultReport, HeadModel } from '@flathead/solver';
import { describe, expect, it } from 'vitest';
import { createHeadStore } from '../../src/state/head-store.ts';
import { createHistory } from '../../src/state/history.ts';
import { keepAccepted } from '../../src/state/keep-accepted.ts';
import { createNoticeStore } from '../../src/state/notice-store.ts';
import { createPointerStore } from '../../src/state/pointer-store.ts';
import { createRunStore } from '../../src/state/run-store.ts';
import { beginMove } from '../../src/state/stage-move.ts';
import { full } from './answers.ts';
import { sampleHead } from './sample-head.ts';

const fault: FaultReport = {
  code: 'OUTSIDE',
  message: 'fasteners.1 lies in site A1.',
  path: 'fasteners.1.at',
  details: {},
};

function bench() {
  const head = createHeadStore(sampleHead);
  const parts = {
    head,
    history: createHistory(head),
    pointer: createPointerStore(),
    run: createRunStore(),
    notices: createNoticeStore(),
  };
  keepAccepted(parts);
  const { run } = parts;
  const model = () => head.getState().model;
  return {
    ...parts,
    model,
    begin: () =>
      beginMove(parts, 'fastener 1', (now, [x, y]) => ({
        ...now,
        fasteners: now.fasteners.map((fastener, i) => (i === 1 ? { ...fastener, at: [x, y] } : fastener)),
      })),
    solve: (of: HeadModel = model()) =>
      run.setState({ solved: { model: of, result: full.result, quality: 'live' }, refusal: null }),
    refuse: (of: HeadModel = model(), code: FaultReport['code'] = fault.code) =>
      run.setState({ refusal: { model: of, fault: { ...fault, code } } }),
    past: () => head.temporal.getState().pastStates.length,
    told: () => parts.notices.getState().notices.map(({ title, text }) => `${title}: ${text}`),
  };
}

describe('a move that ends where the solver refuses the head', () => {
  it('goes back to its last solved state, in the one step of undo that it is', () => {
    const b = bench();
    b.solve();
    const move = b.begin();
    move.to([20, 10], 0);
    b.solve();
    const good = b.model();
    move.to([2, 2], 0);
    b.refuse();
    expect(b.model()).not.toBe(good);
    move.end();
    expect(b.model()).toBe(good);
    expect(b.told()).toEqual([
      'Fastener NE was put back to the last place that can be solved: fasteners.1 lies in site A1.',
    ]);
    expect(b.past()).toBe(1);
    b.history.undo();
    expect(b.model()).toBe(sampleHead);
    // What it told is of a head that is gone.
    expect(b.told()).toEqual([]);
  });

  it('leaves no step where none of its states was solved, also when the refusal comes after the release', () => {
    const b = bench();
    b.solve();
    const move = b.begin();
    move.to([2, 2], 0);
    move.end();
    expect(b.past()).toBe(1);
    b.refuse();
    expect(b.model()).toBe(sampleHead);
    expect(b.past()).toBe(0);
    expect(b.head.temporal.getState().futureStates).toEqual([]);
  });

  it('stays where it was put when the head was refused before, was edited since, or was only not answered', () => {
    const before = bench();
    before.solve({ ...sampleHead });
    before.refuse();
    const move = before.begin();
    move.to([20, 10], 0);
    before.refuse();
    move.end();
    expect(before.model().fasteners[1].at).toEqual([20, 10]);

    const edited = bench();
    edited.solve();
    const other = edited.begin();
    other.to([2, 2], 0);
    const released = edited.model();
    other.end();
    edited.history.edit((now) => ({ ...now, note: 'edited' }));
    edited.refuse(released);
    expect(edited.model().note).toBe('edited');

    const stopped = bench();
    stopped.solve();
    const last = stopped.begin();
    last.to([2, 2], 0);
    last.end();
    stopped.refuse(stopped.model(), 'CANCELLED');
    expect(stopped.model().fasteners[1].at).toEqual([2, 2]);
    expect([...before.told(), ...edited.told(), ...stopped.told()]).toEqual([]);
  });
});
