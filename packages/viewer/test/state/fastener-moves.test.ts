import { describe, expect, it } from 'vitest';
import { fastenerEdit, nearestSite } from '../../src/state/fastener-moves.ts';
import { createHeadStore } from '../../src/state/head-store.ts';
import { createHistory } from '../../src/state/history.ts';
import { clampInside, planOutlines } from '../../src/state/plan-outline.ts';
import { createPointerStore } from '../../src/state/pointer-store.ts';
import { beginMove } from '../../src/state/stage-move.ts';
import { sampleHead } from './sample-head.ts';

function bench() {
  const head = createHeadStore(sampleHead);
  return { head, history: createHistory(head), pointer: createPointerStore() };
}
function begin(b: ReturnType<typeof bench>, index: number, mirrored: boolean) {
  const edit = fastenerEdit(b.head.getState().model, index, mirrored ? 'both' : null);
  const move = beginMove(b, `fastener ${index}`, edit);
  return { ...move, to: (point: readonly [number, number]) => move.to(point, 0.1) };
}
const at = ({ head }: ReturnType<typeof bench>, index: number) => head.getState().model.fasteners[index].at;

describe('a fastener on the move', () => {
  it('is one step of undo, however many places it passed, and redo brings the last back', () => {
    const b = bench();
    const move = begin(b, 1, false);
    expect(b.pointer.getState().dragged).toBe('fastener 1');
    for (const x of [24, 23, 22, 21]) move.to([x, 14]);
    move.end();
    expect(b.pointer.getState().dragged).toBeNull();
    expect(at(b, 1)).toEqual([21, 14]);

    b.history.undo();
    expect(b.head.getState().model).toBe(sampleHead);
    b.history.redo();
    expect(at(b, 1)).toEqual([21, 14]);
  });

  it('leaves the next edit a step of its own', () => {
    const b = bench();
    const move = begin(b, 1, false);
    move.to([20, 12]);
    move.end();
    b.history.edit((model) => ({ ...model, name: 'renamed' }));
    b.history.undo();
    expect(b.head.getState().model.name).toBe('sample');
    expect(at(b, 1)).toEqual([20, 12]);
  });

  it('cancelled, restores the head and leaves nothing to redo', () => {
    const b = bench();
    const move = begin(b, 1, true);
    move.to([20, 12]);
    move.cancel();
    expect(b.head.getState().model).toBe(sampleHead);
    expect(b.head.temporal.getState().futureStates).toEqual([]);
    expect(b.head.temporal.getState().pastStates).toEqual([]);
  });

  it('adds no step when nothing moved', () => {
    const b = bench();
    const move = begin(b, 1, false);
    move.to([25, 15]);
    move.end();
    expect(b.head.temporal.getState().pastStates).toEqual([]);
  });

  it('keeps to tenths of a millimetre and to the head, its bearing included', () => {
    const b = bench();
    const move = begin(b, 1, false);
    move.to([20.04, 11.96]);
    expect(at(b, 1)).toEqual([20, 12]);
    move.to([500, 3]);
    const [x, y] = at(b, 1);
    expect(y).toBe(3);
    expect(x).toBeGreaterThan(27);
    expect(x).toBeLessThanOrEqual(30 - 4.18 / 2);
    move.end();
  });
});

describe('clampInside', () => {
  const outlines = planOutlines(sampleHead);

  it('leaves a point inside alone and pulls one outside to the nearest place', () => {
    expect(clampInside(outlines, [3, 4], 2)).toEqual([3, 4]);
    expect(clampInside(outlines, [3, 400], 2)[1]).toBeCloseTo(18, 9);
    const [x, y] = clampInside(outlines, [100, 100], 2);
    // The corner is rounded by polygon edges, within the chord of which the place may be short.
    expect(Math.hypot(x - 28, y - 18)).toBeLessThan(0.5);
  });

  it('does not jump across a notch', () => {
    const notched = [
      [
        [0, 0],
        [30, 0],
        [30, 20],
        [20, 20],
        [20, 10],
        [10, 10],
        [10, 20],
        [0, 20],
      ],
    ] as const;
    const [x, y] = clampInside(notched, [13, 16], 1);
    expect(x).toBeCloseTo(9, 9);
    expect(y).toBeCloseTo(16, 9);
  });
});

describe('nearestSite', () => {
  it('measures to the edge of the probe field', () => {
    const sites = [
      { name: 'A1', row: 0, column: 0, centre: [-7, 0], field: [6, 6] },
      { name: 'A2', row: 0, column: 1, centre: [7, 0], field: [6, 6] },
    ] as const;
    expect(nearestSite(sites, [13, 7])).toMatchObject({ site: { name: 'A2' }, distance: 5 });
    expect(nearestSite(sites, [-7, 1])).toMatchObject({ site: { name: 'A1' }, distance: 0 });
    expect(nearestSite([], [0, 0])).toBeNull();
  });
});
