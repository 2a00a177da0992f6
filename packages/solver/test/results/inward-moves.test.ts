import { describe, expect, it } from 'vitest';
import { compileHead } from '../../src/model/compile.ts';
import type { HeadModel } from '../../src/model/head-model.ts';
import { checkHeadModel } from '../../src/model/read.ts';
import { inwardMoves, movedInwards, siteBox } from '../../src/results/inward-moves.ts';
import { altered, twoByTwo } from '../model/two-by-two.ts';

// Probe fields of 4.5 by 4 mm about (+-6, +-5): the sites end at 8.25 and 7. Fasteners at (+-21, +-18).
const planOf = (model: HeadModel) => compileHead(model).plan;
const places = (model: HeadModel, along: 'x' | 'y' | 'sites', by: number) => {
  const plan = planOf(model);
  const move = inwardMoves(model, plan, [0, 0]).find((each) => each.along === along)!;
  return movedInwards(model, plan, move, by)?.map(({ at }) => at) ?? null;
};

describe('moves of fasteners towards the sites', () => {
  it('reach to the box around all probe fields', () => {
    expect(siteBox(planOf(twoByTwo))).toEqual([
      [-8.25, -7],
      [8.25, 7],
    ]);
  });

  it('go in mirror image along either axis, or straight towards the sites to a tenth of a millimetre', () => {
    const mirrored = (x: number, y: number) => [
      [-x, y],
      [x, y],
      [-x, -y],
      [x, -y],
    ];
    expect(places(twoByTwo, 'x', 2)).toEqual(mirrored(19, 18));
    expect(places(twoByTwo, 'y', 3)).toEqual(mirrored(21, 15));
    // 2 mm of (12.75, 11): 1.51 and 1.31.
    expect(places(twoByTwo, 'sites', 2)).toEqual(mirrored(19.5, 16.7));
  });

  it('are tried from the fasteners nearest to the worst place on, then of all together', () => {
    // None is the mirror image of another.
    const at = [
      [-21, 18],
      [20, 16],
      [-19, -17],
      [18, -15],
    ];
    const fasteners = twoByTwo.fasteners.map((fastener, i) => ({ ...fastener, at: at[i] }));
    const model = checkHeadModel(altered(twoByTwo, { fasteners }));
    const order = (worst: readonly [number, number]) => {
      const moves = inwardMoves(model, planOf(model), worst).filter(({ along }) => along === 'x');
      return moves.map(({ sets }) => sets.flatMap((set) => set.map(({ index }) => index)));
    };
    // From (10, 6) to each: 33.2, 14.1, 37.0 and 22.5 mm; from (-3, -9): 32.4, 34.0, 17.9 and 21.8 mm.
    expect(order([10, 6])).toEqual([[1], [3], [0], [2], [1, 3, 0, 2]]);
    expect(order([-3, -9])).toEqual([[2], [3], [0], [1], [2, 3, 0, 1]]);
  });

  it('are none beyond the sites, off the frame, or into a keep-out', () => {
    expect(places(twoByTwo, 'y', 11)).not.toBeNull();
    expect(places(twoByTwo, 'y', 11.1)).toBeNull();
    // At (13, 11) there is no frame: its window is 30 by 28.
    expect(places(twoByTwo, 'sites', 10.6)).toBeNull();
    const near = { name: 'connector', shape: { rectangle: [3, 3], centre: [18, 18] }, clearance: 0.2 };
    expect(places(checkHeadModel(altered(twoByTwo, { keepOuts: [near] })), 'x', 2)).toBeNull();
    expect(places(checkHeadModel(altered(twoByTwo, { keepOuts: [near] })), 'y', 6)).not.toBeNull();
  });

  it('are tried set by set, nearest to the worst place first, then all together', () => {
    const more = checkHeadModel(
      altered(twoByTwo, {
        fasteners: [
          ...twoByTwo.fasteners,
          { name: 'N', at: [0, 19], screw: 'M2.5' },
          { name: 'S', at: [0, -19], screw: 'M2.5' },
        ],
      }),
    );
    const plan = planOf(more);
    const told = (worst: [number, number]) =>
      inwardMoves(more, plan, worst).map(({ sets, along }) => [sets.flat().map(({ index }) => index), along]);
    const [four, two] = [
      [0, 1, 2, 3],
      [4, 5],
    ];
    const ways = ['x', 'y', 'sites'];
    // Those on the line of symmetry have no way along x, nor straight other than along y.
    expect(told([0, 15])).toEqual([
      [two, 'y'],
      ...ways.map((along) => [four, along]),
      ...ways.map((along) => [[...two, ...four], along]),
    ]);
    expect(told([20, 15]).slice(0, 4)).toEqual([...ways.map((along) => [four, along]), [two, 'y']]);
  });

  it('keep screw heads a millimetre apart, or as near as they were', () => {
    // M2.5 heads 8 mm apart along x: 3 mm each leaves 2 mm between their middles.
    const pair = altered(twoByTwo, { 'fasteners.0.at': [-12, 18], 'fasteners.1.at': [12, 18] });
    const model = checkHeadModel(pair);
    expect(places(model, 'x', 3)).not.toBeNull();
    const close = checkHeadModel(
      altered(twoByTwo, { fasteners: [...twoByTwo.fasteners, { name: 'F5', at: [-13, 18], screw: 'M2.5' }] }),
    );
    const plan = planOf(close);
    const [first] = inwardMoves(close, plan, [-21, 18]).filter(
      ({ sets, along }) => sets[0][0].index === 0 && along === 'x',
    );
    expect(movedInwards(close, plan, first, 1)).not.toBeNull();
    expect(movedInwards(close, plan, first, 5)).toBeNull();
  });
});
