import { describe, expect, it } from 'vitest';
import type { HeadModel } from '../../src/model/head-model.ts';
import { sharpCornerRemarks } from '../../src/results/sharp-corner-remarks.ts';
import { solveHead } from '../../src/solve-head.ts';
import { twoByTwo } from '../model/two-by-two.ts';

const judged = { bow: 1, strengthFactor: 3 };
const withBody = (body: Partial<HeadModel['body']>, limits: HeadModel['limits'] = judged) => ({
  ...twoByTwo,
  limits,
  body: { ...twoByTwo.body, ...body },
});
const L: [number, number][] = [
  [-30, -30],
  [30, -30],
  [30, 5],
  [5, 5],
  [5, 30],
  [-30, 30],
];

describe('sharp inner corners', () => {
  it('are told of an opening without a radius, where strength is judged', () => {
    const openings: HeadModel['body']['openings'] = [{ rectangle: [4, 2], centre: [0, 1] }];
    expect(sharpCornerRemarks(withBody({ openings }))).toEqual([
      expect.stringMatching(/^The body has 4 sharp inner corners, at \((-?2), (0|2)\) and others: .* radius/),
    ]);
    expect(sharpCornerRemarks(withBody({ openings }, { bow: 1, failureProbability: 1e-6 }))).toHaveLength(1);
    expect(sharpCornerRemarks(withBody({ openings }, { bow: 1 }))).toEqual([]);
  });

  it('are not the corners of an outline, nor rounded ones, nor chords of a circle', () => {
    const openings: HeadModel['body']['openings'] = [
      { rectangle: [4, 2], corner: 0.2 },
      { circle: 3, centre: [9, 0] },
    ];
    expect(sharpCornerRemarks(withBody({ outline: { rectangle: [80, 60] }, openings }))).toEqual([]);
  });

  it('are those of an outline that re-enters, whichever way it is drawn', () => {
    for (const polygon of [L, L.toReversed()])
      expect(sharpCornerRemarks(withBody({ outline: { polygon } }))).toEqual([
        expect.stringMatching(/^The body has a sharp inner corner, at \(5, 5\): /),
      ]);
  });

  it('are told of the window of a frame whose strength is known, in the answer too', () => {
    const frame: HeadModel['frame'] = {
      ...{ outer: { rectangle: [90, 90], corner: 2 }, window: { rectangle: [50, 50] }, thickness: 3 },
      ...{ material: 'steel', side: 'board', join: 'sliding' },
    };
    const materials: HeadModel['materials'] = { steel: { E: 200_000, nu: 0.3, kind: 'metal', strength: 900 } };
    const [remark, ...others] = sharpCornerRemarks({ ...twoByTwo, limits: judged, frame, materials });
    expect(others).toEqual([]);
    expect(remark).toMatch(/^The frame has 4 sharp inner corners/);
    const openings: HeadModel['body']['openings'] = [{ rectangle: [0.4, 6] }];
    const { remarks } = solveHead(withBody({ openings }), { quality: 'live' }).result.verdict;
    expect(remarks).toContainEqual(expect.stringMatching(/^The body has 4 sharp inner corners/));
  });
});
