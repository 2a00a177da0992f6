import { checkHeadModel, type HeadModel, sitePitch } from '@flathead/solver';
import { describe, expect, it } from 'vitest';
import { onGrid } from '../../src/state/grid.ts';
import { gripsOf } from '../../src/state/grips.ts';
import { createHeadStore } from '../../src/state/head-store.ts';
import { createHistory } from '../../src/state/history.ts';
import { keepOutEdit } from '../../src/state/keep-out-edit.ts';
import { pitchCorner, pitchEdit } from '../../src/state/pitch-edit.ts';
import { createPointerStore } from '../../src/state/pointer-store.ts';
import { ribEdit, ribWidthEdit } from '../../src/state/rib-edit.ts';
import { withNewKeepOut, withNewRib, withRibCopy } from '../../src/state/stage-edits.ts';
import { beginMove } from '../../src/state/stage-move.ts';
import { addThing, copyThing, removeThing } from '../../src/state/things.ts';
import { sampleHead } from './sample-head.ts';

const head: HeadModel = checkHeadModel({
  ...sampleHead,
  sites: { columns: 2, rows: 2, die: [7, 6], skip: [1, 1], probes: { count: 100, field: [6, 6], preload: 0.1 } },
  frame: {
    outer: { rectangle: [70, 50] },
    window: { rectangle: [40, 30] },
    material: 'stainless-17-4',
    thickness: 4,
    side: 'board',
    join: 'sliding',
    ribs: [
      { from: [-12, -16], to: [-12, 16], width: 2 },
      { from: [12, 16], to: [12, -16], width: 2 },
      { from: [-22, 0], to: [22, 0], width: 2 },
      { between: 'columns', width: 3 },
    ],
  },
  keepOuts: [
    { name: 'left', shape: { rectangle: [6, 10], centre: [-30, 0] }, clearance: 0.5 },
    { name: 'right', shape: { rectangle: [6, 10], centre: [30, 0] } },
    { name: 'far', shape: { rectangle: [20, 4], centre: [0, 21] } },
    { name: 'round', shape: { circle: 4, centre: [5, -20] } },
  ],
});
const ribs = (model: HeadModel) => model.frame!.ribs!;
const shape = (model: HeadModel, index: number) => model.keepOuts![index].shape;

describe('a free rib on the move', () => {
  it('goes as a whole, on the grid of its middle, and takes its mirror image along with ends as they are', () => {
    const moved = ribEdit(head, 0, 'whole', 'x')(head, [-9.3, 0.2], 0.5);
    expect(ribs(moved).slice(0, 3)).toEqual([
      { from: [-9.5, -16], to: [-9.5, 16], width: 2 },
      { from: [9.5, 16], to: [9.5, -16], width: 2 },
      ribs(head)[2],
    ]);
    expect(ribs(ribEdit(head, 0, 'whole', null)(head, [-9.3, 0.2], 0.5))[1]).toEqual(ribs(head)[1]);
  });

  it('moves one end alone, within the frame', () => {
    const [rib] = ribs(ribEdit(head, 0, 'to', null)(head, [-10, 40], 0.1));
    expect(rib).toMatchObject({ from: [-12, -16] });
    expect('to' in rib && rib.to[0]).toBe(-10);
    expect('to' in rib && rib.to[1]).toBeCloseTo(25, 0);
  });

  it('that is its own image stays symmetric', () => {
    // Across x its ends swap, across y it lies on the line.
    expect(ribs(ribEdit(head, 2, 'to', 'x')(head, [24, 1], 0.1))[2]).toMatchObject({ from: [-24, 1], to: [24, 1] });
    const along = ribEdit(head, 2, 'whole', 'y');
    expect(ribs(along(head, [3, 1.5], 0.1))[2]).toMatchObject({ from: [-19, 0], to: [25, 0] });
    // Pulled well off its line it leaves it.
    expect(ribs(along(head, [3, 5], 0.1))[2]).toMatchObject({ from: [-19, 5], to: [25, 5] });
  });

  it('is as wide as twice the distance of its edge, those in gaps too', () => {
    expect(ribs(ribWidthEdit(head, 0)(head, [-13.9, 3], 0.1))[0].width).toBe(3.8);
    expect(ribs(ribWidthEdit(head, 3)(head, [-2.26, 7], 0.5))[3].width).toBe(4.5);
    expect(ribs(ribWidthEdit(head, 3)(head, [0, 7], 0.5))[3].width).toBe(0.2);
  });
});

describe('a keep-out on the move', () => {
  it('moves, and its mirror image with it', () => {
    const moved = keepOutEdit(head, 0, null, 'x')(head, [-28.24, 3.33], 0.5);
    expect(shape(moved, 0)).toEqual({ rectangle: [6, 10], centre: [-28, 3.5] });
    expect(shape(moved, 1)).toEqual({ rectangle: [6, 10], centre: [28, 3.5] });
    expect(moved.keepOuts![0]).toMatchObject({ name: 'left', clearance: 0.5 });
  });

  it('is resized by a corner about the opposite one', () => {
    // Upper right corner from (-27, 5) to (-25, 9), lower left one held at (-33, -5).
    expect(shape(keepOutEdit(head, 0, 2, null)(head, [-25, 9], 0.1), 0)).toEqual({
      rectangle: [8, 14],
      centre: [-29, 2],
    });
    expect(shape(keepOutEdit(head, 3, 0, null)(head, [8, -16], 0.1), 3)).toEqual({ circle: 10, centre: [5, -20] });
  });

  it('that is its own image stays on the line and grows both ways', () => {
    expect(shape(keepOutEdit(head, 2, null, 'x')(head, [1.5, 20], 0.1), 2)).toMatchObject({ centre: [0, 20] });
    expect(shape(keepOutEdit(head, 2, null, 'x')(head, [4, 20], 0.1), 2)).toMatchObject({ centre: [4, 20] });
    expect(shape(keepOutEdit(head, 2, 2, 'x')(head, [12, 24], 0.1), 2)).toEqual({
      rectangle: [24, 5],
      centre: [0, 21.5],
    });
  });
});

describe('the site pitch on the move', () => {
  it('follows the far right corner, on the grid, and replaces die and skip', () => {
    // Pitch 14 x 12, field 6: the corner is at 7 + 3, 6 + 3.
    expect(pitchCorner(head)).toEqual([10, 9]);
    const moved = pitchEdit(head)(head, [11.1, 9.52], 0.5);
    expect(moved.sites).toEqual({ columns: 2, rows: 2, pitch: [16, 13], probes: head.sites.probes });
    expect(pitchEdit(head)(head, [10.01, 9], 0.1)).toBe(head);
  });

  it('stops where probe fields touch', () => {
    expect(sitePitch(pitchEdit(head)(head, [0, 0], 0.1).sites)).toEqual([6, 6]);
  });
});

it('writes what is on a grid with no more digits than the grid has', () => {
  expect([onGrid(0.30000000000000004, 0.1), onGrid(12.34567, 0), onGrid(-0.2, 0.5), onGrid(7.6, 1)]).toEqual([
    0.3, 12.346, 0, 8,
  ]);
});

it('shows ends, edge and corners of the chosen thing alone', () => {
  const keys = (chosen: string | null) => gripsOf(head, chosen).map(({ key }) => key);
  const closed = ['pitch', 'rib 0', 'rib 1', 'rib 2', 'rib 3 edge', 'keepOut 0', 'keepOut 1', 'keepOut 2', 'keepOut 3'];
  expect(keys(null)).toEqual(closed);
  expect(keys('rib 1 from').filter((key) => !closed.includes(key))).toEqual(['rib 1 from', 'rib 1 to', 'rib 1 edge']);
  // All of them clear of each other along the rib: its start, the edge of its width, its middle.
  const place = (key: string) => gripsOf(head, 'rib 0').find((grip) => grip.key === key)!.at;
  expect([place('rib 0 from'), place('rib 0 edge'), place('rib 0')]).toEqual([
    [-12, -16],
    [-13, -8],
    [-12, 0],
  ]);
  expect(keys('keepOut 3').filter((key) => !closed.includes(key))).toEqual(['keepOut 3 corner 0']);
});

describe('things added, copied and removed', () => {
  const bench = () => {
    const store = createHeadStore(head);
    return { head: store, history: createHistory(store), pointer: createPointerStore() };
  };

  it('are chosen, and each is one step of undo', () => {
    const b = bench();
    for (const kind of ['fastener', 'keepOut', 'rib'] as const) {
      addThing(b, kind);
      const chosen = b.pointer.getState().selected!;
      copyThing(b, chosen);
      expect(b.pointer.getState().selected).not.toBe(chosen);
      expect(checkHeadModel(b.head.getState().model)).toEqual(b.head.getState().model);
      removeThing(b, b.pointer.getState().selected!);
      removeThing(b, chosen);
      expect(b.head.getState().model).toEqual(head);
      for (let i = 0; i < 4; i++) b.history.undo();
      expect(b.head.getState().model).toBe(head);
    }
  });

  it('stand beside what is there', () => {
    const two = withNewKeepOut(withNewKeepOut(head));
    expect(shape(two, 4)).not.toEqual(shape(two, 5));
    // The one gap between columns is at x = 0; the window ends at y = 15.
    expect(ribs(withNewRib(head)).at(-1)).toEqual({ from: [0, -16], to: [0, 16], width: 5 });
    expect(ribs(withRibCopy(head, 0)).at(-1)).toEqual({ from: [-8, -16], to: [-8, 16], width: 2 });
  });
});

it('a drag of anything is one step of undo, and Escape leaves none', () => {
  const store = createHeadStore(head);
  const history = createHistory(store);
  const pointer = createPointerStore();
  const move = beginMove({ history, pointer }, 'keepOut 0', keepOutEdit(head, 0, null, null));
  move.to([-25, 0], 0.1);
  move.to([-24, 0], 0.1);
  expect(pointer.getState().dragged).toBe('keepOut 0');
  move.end();
  expect(pointer.getState().dragged).toBeNull();
  history.undo();
  expect(store.getState().model).toBe(head);
  const other = beginMove({ history, pointer }, 'pitch', pitchEdit(head));
  other.to([15, 12], 0.1);
  other.cancel();
  expect(store.getState().model).toBe(head);
  expect(store.temporal.getState().pastStates).toEqual([]);
});
